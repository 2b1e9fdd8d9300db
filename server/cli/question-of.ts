import { z } from 'zod';
import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { type Question, questionSchema } from '../../shared/schemas/question';
import { CommandError } from './io';

/** The question that was typed. Refuses a device that is not in the catalogue, naming those that are. */
export function questionOf(model: CasebookModel, text: string, options: { device?: string; complete?: boolean }): Question {
  const { device = null, complete = false } = options;
  if (device !== null && !model.words.devices.has(device)) {
    const known = [...model.words.devices.keys()].join(', ');
    throw new CommandError(`There is no device "${device}" in the catalogue. There are: ${known}.`);
  }
  const parsed = questionSchema.safeParse({ text, device, complete });
  if (!parsed.success) throw new CommandError(z.prettifyError(parsed.error), 'usage');
  return parsed.data;
}
