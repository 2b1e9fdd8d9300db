import type { SuggestedKind, SuggestedPage, SuggestedPages } from '../../schemas/search';
import type { CasebookModel } from '../casebook/casebook-model';
import { type Named, scoreNamed, wordsOf } from '../casebook/match-name';

type Offer = Named & { page: SuggestedPage };

/** Role of a cause that is no part ("no fault found"): it has no page. */
const NO_PART = 'no-part';

/**
 * Pages of the casebook that what was typed so far may mean, by kind, best first. Every word typed must begin a word of
 * the name or of one of its synonyms; one of four letters or more may be one slip off. Nothing typed offers nothing.
 * Cases are not in it: they are found by the full text.
 */
export function suggestPages(model: CasebookModel, text: string, perKind: number): SuggestedPages['groups'] {
  const typed = wordsOf(text);
  if (typed.length === 0) return [];
  const kinds: [SuggestedKind, Iterable<Offer>][] = [
    ['symptom', symptoms(model)],
    ['device', devices(model)],
    ['part', parts(model)],
    ['fix', fixes(model)],
  ];
  return kinds.flatMap(([kind, offers]) => {
    const items = bestOf(offers, typed, perKind);
    return items.length > 0 ? [{ kind, items }] : [];
  });
}

function bestOf(offers: Iterable<Offer>, typed: readonly string[], most: number): SuggestedPage[] {
  const found = [...offers].flatMap((offer, position) => {
    const score = scoreNamed(offer, typed);
    return score === null ? [] : [{ offer, score, position }];
  });
  found.sort((a, b) => a.score - b.score || a.offer.label.length - b.offer.label.length || a.position - b.position);
  return found.slice(0, most).map(({ offer }) => offer.page);
}

function* symptoms({ words }: CasebookModel): Generator<Offer> {
  for (const { slug, label, synonyms } of words.symptoms.values()) {
    yield { label, synonyms, page: { label, href: `/symptoms/${slug}`, note: '' } };
  }
}

function* devices({ words }: CasebookModel): Generator<Offer> {
  for (const place of words.devices.values()) {
    const { model, board, label, slug } = place;
    const synonyms = board === null ? [...model.synonyms, `${model.maker.name} ${model.name}`] : [];
    const href = board === null ? `/devices/${slug}` : `/devices/${model.slug}#${slug}`;
    yield { label, synonyms, page: { label, href, note: board === null ? `by ${model.maker.name}` : '' } };
  }
}

/** Roles, also by the part numbers that fill them ("7805"). */
function* parts({ words, coding }: CasebookModel): Generator<Offer> {
  const numbers = new Map<string, Set<string>>();
  const boards = new Map<string, Set<string>>();
  for (const model of coding.catalogue.models) {
    for (const board of model.boards) {
      for (const part of board.parts) {
        add(boards, part.role, board.slug);
        if (part.partNumber !== null) add(numbers, part.role, part.partNumber);
      }
    }
  }
  for (const { slug, label, synonyms } of words.roles.values()) {
    if (slug === NO_PART) continue;
    const count = boards.get(slug)?.size ?? 0;
    const note = count === 0 ? '' : count === 1 ? 'on 1 board' : `on ${count} boards`;
    yield { label, synonyms: [...synonyms, ...(numbers.get(slug) ?? [])], page: { label, href: `/parts/${slug}`, note } };
  }
}

function* fixes({ words }: CasebookModel): Generator<Offer> {
  for (const { slug, label, synonyms } of words.fixes.values()) {
    yield { label, synonyms, page: { label, href: `/fixes/${slug}`, note: '' } };
  }
}

function add(sets: Map<string, Set<string>>, key: string, value: string): void {
  const set = sets.get(key) ?? new Set();
  sets.set(key, set.add(value));
}
