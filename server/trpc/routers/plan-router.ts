import { z } from 'zod';
import { planOptionsSchema } from '../../../shared/schemas/plan';
import { questionSchema } from '../../../shared/schemas/question';
import { makePlan } from '../../services/make-plan';
import { knownDevice } from '../known-device';
import { publicProcedure, router } from '../init';

const planInput = z.object({ question: questionSchema, options: planOptionsSchema.default(() => planOptionsSchema.parse({})) });

export const planRouter = router({
  /** The plan of checks and fixes with a low expected cost, for what the user has and can do. */
  make: publicProcedure.input(planInput).query(({ ctx, input }) => {
    knownDevice(ctx.casebook.model, input.question.device);
    return makePlan(ctx.casebook.model, input.question, input.options);
  }),
});
