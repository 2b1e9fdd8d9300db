import { createCallerFactory, router } from './init';
import { afterReportRouter } from './routers/after-report-router';
import { accountRouter } from './routers/account-router';
import { browseRouter } from './routers/browse-router';
import { benchRouter } from './routers/bench-router';
import { casebookRouter } from './routers/casebook-router';
import { healthRouter } from './routers/health-router';
import { logRouter } from './routers/log-router';
import { lookUpRouter } from './routers/look-up-router';
import { photoRouter } from './routers/photo-router';
import { planRouter } from './routers/plan-router';
import { searchRouter } from './routers/search-router';
import { reportRouter } from './routers/report-router';
import { reviewRouter } from './routers/review-router';
import { submissionRouter } from './routers/submission-router';
import { wordRouter } from './routers/word-router';
import { workingUnitRouter } from './routers/working-unit-router';

export const appRouter = router({
  account: accountRouter,
  afterReport: afterReportRouter,
  browse: browseRouter,
  bench: benchRouter,
  casebook: casebookRouter,
  health: healthRouter,
  log: logRouter,
  lookup: lookUpRouter,
  photo: photoRouter,
  plan: planRouter,
  search: searchRouter,
  report: reportRouter,
  review: reviewRouter,
  submission: submissionRouter,
  word: wordRouter,
  workingUnit: workingUnitRouter,
});
export type AppRouter = typeof appRouter;

/** Calls procedures from code of this process: pages on the server, and tests. */
export const createCaller = createCallerFactory(appRouter);
