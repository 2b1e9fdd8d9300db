import type { SearchDocument } from '../../shared/domain/search/search-document';
import type { EngineName, SearchQuery, SearchResult } from '../../shared/schemas/search';

/** How far an index has followed the casebook. It is kept with the index itself. */
export type IndexState = {
  /** Number of the last change that it has taken in; 0 for none. */
  cursor: number;
  /** The case of that change: another one there means that the database was replaced by an older or other one. */
  cursorCase: string | null;
  /** Names vocabulary, catalogue and form of the documents: with another one the index is made anew. */
  fingerprint: string;
};

/** What has changed since: documents that replace those of the same id, and ids that must not be found any more. */
export type IndexChange = { put: readonly SearchDocument[]; remove: readonly string[] };

/**
 * Finds cases by words and filters. The one interface of the project: there are two engines, and one suite of tests
 * holds for both. An index can always be made again from the database; it is never the truth.
 */
export type SearchEngine = {
  readonly name: EngineName;
  /** Any text is fine; a cursor of another search or engine starts at the beginning. Rejects where the engine cannot be reached. */
  search(query: SearchQuery): Promise<SearchResult>;
  /** Null where there is no index yet. */
  state(): Promise<IndexState | null>;
  /**
   * Takes in what changed between two states; when it resolves, searches show it. Doing it twice does no harm.
   * @returns false where the index does not stand at `from` (any more), and nothing was done
   */
  apply(change: IndexChange, from: IndexState, to: IndexState): Promise<boolean>;
  /** Makes the whole index anew from these batches; the old one answers until the new one is complete. */
  rebuild(batches: AsyncIterable<readonly SearchDocument[]>, state: IndexState): Promise<void>;
  close(): Promise<void>;
};
