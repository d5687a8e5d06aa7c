/** Playing leads the text, as long as the teacher has not scrolled elsewhere or is writing. */
import { useCallback, useEffect, useRef } from 'react';
import type { Player } from './player.ts';

export interface FollowingPlace {
  readonly player: Player;
  /** The cue that is played; null where none is. */
  readonly currentId: string | null;
  /** Where each item stands in the document. */
  readonly indexById: ReadonlyMap<string, number>;
  readonly isEditing: boolean;
  readonly scrollTo: (at: number, place: 'near' | 'middle') => void;
  readonly onFollowing: (following: boolean) => void;
}

/** @returns `join`: from here on the text follows again; `follow`: the same, and goes to the playing place at once. */
export function useFollowing(place: FollowingPlace) {
  const { player, currentId, indexById, isEditing, scrollTo, onFollowing } = place;
  const following = useRef(true);

  // biome-ignore lint/correctness/useExhaustiveDependencies: only another cue being played moves the text
  useEffect(() => {
    if (!following.current || isEditing || currentId === null || !player.getState().playing) return;
    const at = indexById.get(currentId);
    if (at !== undefined) scrollTo(at, 'near');
  }, [currentId]);

  useEffect(() => {
    const leave = () => {
      if (!following.current || !player.getState().playing) return;
      following.current = false;
      onFollowing(false);
    };
    const onKey = (event: globalThis.KeyboardEvent) => {
      if (['PageUp', 'PageDown', 'Home', 'End'].includes(event.key)) leave();
    };
    window.addEventListener('wheel', leave, { passive: true });
    window.addEventListener('touchmove', leave, { passive: true });
    window.addEventListener('keydown', onKey);
    return () => {
      window.removeEventListener('wheel', leave);
      window.removeEventListener('touchmove', leave);
      window.removeEventListener('keydown', onKey);
    };
  }, [player, onFollowing]);

  const join = useCallback(() => {
    following.current = true;
    onFollowing(true);
  }, [onFollowing]);
  const follow = useCallback(() => {
    join();
    const at = currentId === null ? undefined : indexById.get(currentId);
    if (at !== undefined) scrollTo(at, 'middle');
  }, [join, currentId, indexById, scrollTo]);
  return { join, follow };
}
