import { slugSchema } from '../../../../shared/schemas/terms';
import { firstOf, type SearchParams } from '../../../_address/question';

/** The slug that a parameter of the address holds; null where it holds none. */
export function slugOf(params: SearchParams, name: string): string | null {
  const parsed = slugSchema.safeParse(firstOf(params, name) ?? '');
  return parsed.success ? parsed.data : null;
}
