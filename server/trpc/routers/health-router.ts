import { siteHealth } from '../../services/health/site-health';
import { keeperProcedure, router } from '../init';

export const healthRouter = router({
  /** How the moderation stands, for whoever keeps the site. */
  overview: keeperProcedure.query(({ ctx }) => siteHealth(ctx.db, new Date())),
});
