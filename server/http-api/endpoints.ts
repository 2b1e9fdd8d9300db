import type { z } from 'zod';
import { catalogueSchema } from '../../shared/schemas/device';
import { vocabularySchema } from '../../shared/schemas/vocabulary';
import { appRouter } from '../trpc/root';

/** A procedure that programs may ask over HTTP. */
export type Endpoint = {
  /** Below /api/v1; what stands in braces is a field of the procedure's input. */
  path: string;
  /** The procedure by its path in the router: its input is the parameters, its output the answer. */
  procedure: string;
  /** Name of the answer's schema in the description. */
  answer: string;
  summary: string;
  /** The answer's schema, where the procedure does not state it. */
  output?: z.ZodType;
};

/** The whole interface. Only queries that anybody may ask stand here: a test walks them. */
export const ENDPOINTS: readonly Endpoint[] = [
  { path: '/cases', procedure: 'casebook.listCases', answer: 'CaseList', summary: 'Accepted cases, latest months first' },
  { path: '/cases/{id}', procedure: 'casebook.getCase', answer: 'Case', summary: 'One accepted case in full' },
  { path: '/symptoms', procedure: 'browse.listSymptoms', answer: 'SymptomList', summary: 'Every symptom with its cases' },
  { path: '/symptoms/{slug}', procedure: 'browse.getSymptom', answer: 'Symptom', summary: 'A symptom: how often, where, what it was, what cured it' },
  { path: '/devices', procedure: 'casebook.getCatalogue', answer: 'Catalogue', summary: 'Every device with its boards and parts', output: catalogueSchema },
  { path: '/devices/{slug}', procedure: 'browse.getDevice', answer: 'Device', summary: 'A device: its boards, faults and weak spots' },
  { path: '/boards/{slug}/readings', procedure: 'browse.getBoardReadings', answer: 'BoardReadings', summary: 'What working units of a board show, pin by pin' },
  { path: '/parts', procedure: 'browse.listParts', answer: 'PartList', summary: 'Every part that can be at fault' },
  { path: '/parts/{slug}', procedure: 'browse.getPart', answer: 'Part', summary: 'A part: where it sits, how it fails, how to tell' },
  { path: '/fixes', procedure: 'browse.listFixes', answer: 'FixList', summary: 'Every fix with how often it cured' },
  { path: '/fixes/{slug}', procedure: 'browse.getFix', answer: 'Fix', summary: 'A fix: for what, how often it worked, what it takes' },
  { path: '/vocabulary', procedure: 'casebook.listVocabulary', answer: 'Vocabulary', summary: 'Every word that cases are told in', output: vocabularySchema },
  { path: '/overview', procedure: 'browse.overview', answer: 'Overview', summary: 'Cases over time, and which symptoms go with which causes' },
];

type ProcedureDef = { type: string; inputs: z.ZodType[]; output?: z.ZodType };

/** The procedure behind an endpoint: its kind and its schemas. Throws where the router has no such procedure. */
export function procedureOf({ procedure }: Endpoint): ProcedureDef {
  const found = (appRouter._def.procedures as unknown as Record<string, { _def: ProcedureDef } | undefined>)[procedure];
  if (!found) throw new Error(`The router has no procedure "${procedure}".`);
  return found._def;
}
