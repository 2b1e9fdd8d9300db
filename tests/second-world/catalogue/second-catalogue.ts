import { vocabulary } from '../../../seed/vocabulary';
import type { Board, BoardPart, DeviceCatalogue } from '../../../shared/schemas/device';
import type { DeviceCategory } from '../../../shared/schemas/terms';
import { type BoardPlan, modelPlans } from './board-plans';
import { type PartKind, type PartKindName, partKinds } from './part-kinds';

/** Roles that every board has without listing a part for them. */
export const IMPLIED_ROLES: ReadonlySet<string> = new Set(['solder-joint', 'trace', 'no-part']);
const outsideRoles = new Set(vocabulary.roles.filter((role) => role.outside).map((role) => role.slug));

/** Whether a board has the role: by a part, because every board has it, or because it is outside the unit. */
export function hasRole(roles: ReadonlySet<string>, role: string): boolean {
  return roles.has(role) || IMPLIED_ROLES.has(role) || outsideRoles.has(role);
}

function pinNames(kind: PartKind): string[] {
  const names = Array.from({ length: kind.pins }, (_, i) => `P${i + 1}`);
  if (kind.package === 'DIP' || kind.package === 'SOIC') {
    names[kind.pins / 2 - 1] = 'GND';
    names[kind.pins - 1] = 'VCC';
  }
  return names;
}

function partsOf(plan: BoardPlan): BoardPart[] {
  const next = new Map<string, number>();
  const parts: BoardPart[] = [];
  for (const [name, count] of Object.entries(plan.fitted)) {
    const kind: PartKind = partKinds[name as PartKindName];
    for (let i = 0; i < count; i += 1) {
      const number = (next.get(kind.prefix) ?? 0) + 1;
      next.set(kind.prefix, number);
      const { prefix, ...rest } = kind;
      parts.push({ designator: `${prefix}${number}`, ...rest, pinNames: pinNames(kind) });
    }
  }
  return parts;
}

function boardOf(plan: BoardPlan, category: DeviceCategory): Board {
  const parts = partsOf(plan);
  const roles = new Set(parts.map((part) => part.role));
  const noTwelve = category === 'console' || plan.slug.includes('lantern') ? ['rail-12v', 'rail-minus-5v'] : [];
  const impossible = vocabulary.checks
    .filter((check) => check.categories.includes(category))
    .filter((check) => !hasRole(roles, check.targetRole) || noTwelve.includes(check.slug))
    .map((check) => check.slug);
  return { slug: plan.slug, revision: plan.revision, summary: plan.summary, parts, impossibleChecks: impossible };
}

/** The devices of this world: seven models by four makers that exist nowhere else. */
export const secondCatalogue: DeviceCatalogue = {
  models: modelPlans.map((plan) => ({
    slug: plan.slug,
    name: plan.name,
    maker: { slug: plan.maker.toLowerCase(), name: plan.maker },
    category: plan.category,
    summary: plan.summary,
    synonyms: plan.synonyms,
    boards: plan.boards.map((board) => boardOf(board, plan.category)),
  })),
};
