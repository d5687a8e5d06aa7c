/** The search in a page's address. */

export interface SearchQuery {
  /** Empty where nothing is sought. */
  readonly words: string;
  /** Id of the one lesson whose places are all shown. */
  readonly lesson: string | null;
}

/** The first value counts where a name stands twice. */
export function searchQuery(query: Readonly<Record<string, string | string[] | undefined>>): SearchQuery {
  const first = (name: string): string => [query[name]].flat()[0] ?? '';
  return { words: first('words').trim(), lesson: first('lesson') || null };
}
