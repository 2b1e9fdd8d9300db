import { z } from 'zod';

/** Readable identifier of a vocabulary entry: lower-case words joined by hyphens. */
export const slugSchema = z
  .string()
  .max(80)
  .regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/, 'Use lower-case letters, digits and single hyphens.');

/** Access stages, from the least invasive (0, outside the case) to the hardest to undo (4). */
export const STAGES = [
  { stage: 0, label: 'Outside the case' },
  { stage: 1, label: 'Case open, unpowered or by eye' },
  { stage: 2, label: 'Powered, probing' },
  { stage: 3, label: 'Solder, reversible' },
  { stage: 4, label: 'Solder, hard to undo' },
] as const;
export const stageSchema = z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3), z.literal(4)]);
export type Stage = z.infer<typeof stageSchema>;

export const HAZARDS = [
  'mains',
  'stored-charge',
  'high-voltage',
  'hot-tools',
  'fumes',
  'flammable-solvent',
  'battery',
  'static',
  'sharp-heavy',
] as const;
export const hazardSchema = z.enum(HAZARDS);
export type Hazard = z.infer<typeof hazardSchema>;

export const DEVICE_CATEGORIES = ['home-computer', 'console', 'handheld', 'arcade-board', 'monitor', 'drive'] as const;
export const categorySchema = z.enum(DEVICE_CATEGORIES);
export type DeviceCategory = z.infer<typeof categorySchema>;

export const INSTRUMENTS = [
  'none',
  'multimeter',
  'logic-probe',
  'oscilloscope',
  'frequency-counter',
  'high-voltage-probe',
  'capacitor-tester',
  'magnifier',
  'thermometer',
  'soldering-iron',
  'bench-supply',
  'test-media',
] as const;
export const instrumentSchema = z.enum(INSTRUMENTS);
export type Instrument = z.infer<typeof instrumentSchema>;

/** What a check or fix needs besides instruments. */
export const NEEDS = ['working-unit', 'donor', 'new-part'] as const;
export const needSchema = z.enum(NEEDS);
export type Need = z.infer<typeof needSchema>;

/** Area of the unit that a symptom or a check belongs to; for grouping on screen. */
export const AREAS = [
  'power',
  'clock-reset',
  'buses',
  'memory',
  'video',
  'sound',
  'input',
  'media-connectors',
  'mechanical-battery',
  'monitor',
] as const;
export const areaSchema = z.enum(AREAS);
export type Area = z.infer<typeof areaSchema>;

/** UCUM units that readings use. */
export const UNITS = ['V', 'mV', 'Ohm', 'kOhm', 'MOhm', 'Hz', 'kHz', 'MHz', 'mA', 'A', 'uF', 'nF', 'Cel', 'ms', 's'] as const;
export const unitSchema = z.enum(UNITS);
export type Unit = z.infer<typeof unitSchema>;

export const LOGIC_STATES = ['high', 'low', 'pulsing', 'floating'] as const;
export const logicStateSchema = z.enum(LOGIC_STATES);
export type LogicState = z.infer<typeof logicStateSchema>;
