import { z } from 'zod';
import { categorySchema, slugSchema } from './terms';

export const PACKAGES = ['DIP', 'SIP', 'QFP', 'SOIC', 'PLCC', 'TO-220', 'TO-92', 'connector', 'axial', 'radial', 'can', 'other'] as const;

/** One part on a board: designator, role, a generic standard part number where there is one, pins. */
export const boardPartSchema = z.object({
  designator: z.string().regex(/^[A-Z]{1,4}[0-9]{1,4}[A-Z]?$/, 'Use a designator such as U14 or RN2.'),
  role: slugSchema,
  partNumber: z.string().max(40).nullable(),
  package: z.enum(PACKAGES),
  pins: z.int().min(1).max(208),
  pinNames: z.array(z.string().max(16)).max(208),
});
export type BoardPart = z.infer<typeof boardPartSchema>;

export const boardSchema = z.object({
  slug: slugSchema,
  revision: z.string().min(1).max(40),
  summary: z.string().min(10).max(400),
  parts: z.array(boardPartSchema).min(1),
  /** Checks that make no sense on this board (no such part), by slug. */
  impossibleChecks: z.array(slugSchema),
});
export type Board = z.infer<typeof boardSchema>;

export const modelSchema = z.object({
  slug: slugSchema,
  name: z.string().min(2).max(60),
  maker: z.object({ slug: slugSchema, name: z.string().min(2).max(60) }),
  category: categorySchema,
  summary: z.string().min(10).max(400),
  /** Other ways the model is written on a bench ("qb8"). */
  synonyms: z.array(z.string().min(2).max(40)),
  boards: z.array(boardSchema).min(1),
});
export type DeviceModel = z.infer<typeof modelSchema>;

export const catalogueSchema = z.object({ models: z.array(modelSchema).min(1) });
export type DeviceCatalogue = z.infer<typeof catalogueSchema>;
