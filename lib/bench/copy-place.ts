/** Where lessons are written to, and in whose name. */
export interface CopyPlace {
  readonly workshopId: string;
  readonly userId: string;
  /** Whether the one who brought it in may change the workshop's own settings. */
  readonly isOwner: boolean;
  readonly now: Date;
  /** An id for one thing of the copy, the same in every attempt. */
  readonly idFor: (thing: string) => string;
}
