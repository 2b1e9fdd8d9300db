import { questionSchema } from '../../../shared/schemas/question';
import { answerQuestion } from '../../services/answer-question';
import { noteUnread } from '../../services/words/unread-words';
import { knownDevice } from '../known-device';
import { publicProcedure, router } from '../init';

export const lookUpRouter = router({
  /** Likely causes, next checks, fixes and similar cases for a question. */
  ask: publicProcedure.input(questionSchema).query(async ({ ctx, input }) => {
    knownDevice(ctx.casebook.model, input.device);
    const { model } = ctx.casebook;
    const answer = await answerQuestion(ctx.db, model, input);
    noteUnread(ctx.db, model, { text: input.text, unread: answer.read.unread, now: new Date() });
    return answer;
  }),
});
