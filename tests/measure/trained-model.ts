import { existsSync, readFileSync, writeFileSync } from 'node:fs';
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

/** What `fitOn` gives. It takes half a minute, so it is kept in the file that is named, if one is, and read from there the next time. */
export function keptFit(world: World, cases: readonly CaseContent[], path: string | undefined): Settings {
  if (path !== undefined && existsSync(path)) return JSON.parse(readFileSync(path, 'utf8')) as Settings;
  const settings = fitOn(world, cases);
  if (path !== undefined) writeFileSync(path, JSON.stringify(settings));
  return settings;
}

/** A casebook of these cases, all accepted, with settings already fitted. */
export function casebookOf(world: World, cases: readonly CaseContent[], settings: Settings): CasebookModel {
  const model = createCasebookModel(world.vocabulary, world.catalogue, () => settings);
  cases.forEach((content, i) => addCase(model, { id: `case-${i}`, status: 'accepted', content }));
  return model;
}
