import type { World } from '../../seed/world';
import { addCase, type CasebookModel, createCasebookModel } from '../../shared/domain/casebook/casebook-model';
import { createCoding } from '../../shared/domain/coding/coding';
import { encodeCase } from '../../shared/domain/coding/encode-case';
import type { CaseContent } from '../../shared/schemas/case';
import { fitSettings } from '../../shared/stats/fit-settings';
import type { Settings } from '../../shared/stats/settings';

/** The settings that the production fit chooses on these cases. */
export function fitOn(world: World, cases: readonly CaseContent[]): Settings {
  const coding = createCoding(world.vocabulary, world.catalogue);
  const records = cases.map((content) => encodeCase(coding, content));
  return fitSettings(coding.layout, records);
}

/** A casebook of these cases, all accepted, with settings already fitted. */
export function casebookOf(world: World, cases: readonly CaseContent[], settings: Settings): CasebookModel {
  const model = createCasebookModel(world.vocabulary, world.catalogue, () => settings);
  cases.forEach((content, i) => addCase(model, { id: `case-${i}`, status: 'accepted', content }));
  return model;
}
