/** How the id of a weave begins that was derived from a teacher's own sequence; the sequence's key follows. */
export const OWN = 'own ';

export const isOwn = (weave: string): boolean => weave.startsWith(OWN);
