import { questionSchema } from '../../../shared/schemas/question';
import { answerQuestion } from '../../services/answer-question';
import { countableWords, countUnread } from '../../services/words/unread-words';
import { noteAgain } from '../../front/answering';
import { countProcedure } from '../../watching/metrics';
import { knownDevice } from '../known-device';
import { publicProcedure, router } from '../init';

export const lookUpRouter = router({
  /** Likely causes, next checks, fixes and similar cases for a question. */
  ask: publicProcedure.input(questionSchema).query(async ({ ctx, input, path }) => {
    knownDevice(ctx.casebook.model, input.device);
    const { model } = ctx.casebook;
    const answer = await answerQuestion(ctx.db, model, input);
    const words = countableWords(model, input.text, answer.read.unread);
    countUnread(ctx.db, words, new Date());
    noteAgain((seconds) => {
      countProcedure(path, 'ok', seconds);
      countUnread(ctx.db, words, new Date());
    });
    return answer;
  }),
});
