import { questionSchema } from '../../../shared/schemas/question';
import { answerQuestion } from '../../services/answer-question';
import { knownDevice } from '../known-device';
import { publicProcedure, router } from '../init';

export const lookUpRouter = router({
  /** Likely causes, next checks, fixes and similar cases for a question. */
  ask: publicProcedure.input(questionSchema).query(({ ctx, input }) => {
    knownDevice(ctx.casebook.model, input.device);
    return answerQuestion(ctx.db, ctx.casebook.model, input);
  }),
});
