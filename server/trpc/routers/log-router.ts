import { logFilterSchema } from '../../../shared/schemas/log';
import { streamLog } from '../../repositories/log-repository';
import { fullLog, publicLog } from '../../services/log/read-log';
import { guestProcedure, moderatorProcedure, router } from '../init';

export const logRouter = router({
  /** What was decided, by month and without names: open to everybody. */
  byMonth: guestProcedure.input(logFilterSchema.prefault({})).query(({ ctx, input }) => publicLog(ctx.db, input)),

  /** The log in its exact order, with who did what to what. */
  inOrder: moderatorProcedure.input(logFilterSchema.prefault({})).query(({ ctx, input }) => fullLog(ctx.db, input)),

  /** All of it as JSON Lines, which `cli log verify --file` reads. */
  export: moderatorProcedure.query(async ({ ctx }) => {
    let lines = '';
    for await (const entry of streamLog(ctx.db)) lines += `${JSON.stringify(entry)}\n`;
    return lines;
  }),
});
