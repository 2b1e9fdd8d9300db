import { z } from 'zod';

export const BACKUP_VERSION = 1;
export const DATABASE_NAME = 'second-bench.db';
export const PHOTO_FOLDER_NAME = 'photos';
export const MANIFEST_NAME = 'manifest.json';

const fileSchema = z.object({
  /** Inside the backup, with forward slashes. */
  path: z.string().regex(/^(second-bench\.db|photos\/[\w.-]+)$/),
  bytes: z.int().min(0),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
});

/** What a backup says of itself. */
export const backupManifestSchema = z.object({
  version: z.literal(BACKUP_VERSION, { error: `This program reads backups of version ${BACKUP_VERSION} alone.` }),
  writtenAt: z.iso.datetime(),
  /** The newest migration that the database had seen. */
  migration: z.string().nullable(),
  /** Stored cases, of any status, and those that are accepted. */
  cases: z.int().min(0),
  accepted: z.int().min(0),
  /** Where the log of decisions ended: what a shortened log is held against. */
  log: z.object({ entries: z.int().min(0), hash: z.string() }).nullable(),
  files: z.array(fileSchema).min(1),
});

export type BackupManifest = z.infer<typeof backupManifestSchema>;
export type BackupFile = z.infer<typeof fileSchema>;
