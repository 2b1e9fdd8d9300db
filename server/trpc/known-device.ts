import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { AppError } from '../../shared/errors';

/** Refuses a device slug that is not in the catalogue; null, for none chosen, passes. */
export function knownDevice(model: CasebookModel, device: string | null): void {
  if (device !== null && !model.words.devices.has(device)) throw new AppError('device-not-found');
}
