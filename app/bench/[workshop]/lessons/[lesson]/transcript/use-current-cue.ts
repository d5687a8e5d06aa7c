/** Which cue is being played: changes when another one begins, not at every frame. */
import { useCallback, useSyncExternalStore } from 'react';
import type { Cue } from '#lib/transcript/cue.ts';
import { cueIndexAt } from './document-items.ts';
import type { Player } from './player.ts';

export function useCurrentCueId(player: Player, cues: readonly Cue[]): string | null {
  const read = useCallback(
    () => (player.getState().ready ? (cues[cueIndexAt(cues, player.timeMs())]?.id ?? null) : null),
    [player, cues],
  );
  const subscribe = useCallback(
    (told: () => void) => {
      const stopTicks = player.onTick(told);
      const stopState = player.subscribe(told);
      return () => {
        stopTicks();
        stopState();
      };
    },
    [player],
  );
  return useSyncExternalStore(subscribe, read, () => null);
}
