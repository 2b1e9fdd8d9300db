import { answerApi } from '../../../../server/http-api/answer-api';

/** The read-only interface for programs. */
export { answerApi as DELETE, answerApi as GET, answerApi as PATCH, answerApi as POST, answerApi as PUT };
