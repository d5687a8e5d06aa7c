'use client';
/**
 * Opens a view of a picture that can be turned. The view and its data are
 * loaded when they are asked for; without script there is no button, and the
 * still pictures tell the same.
 */
import { type ComponentType, useEffect, useRef, useState } from 'react';
import type { Scene } from '#lib/weave/picture/draw-scene.ts';
import styles from './turned-view.module.css';

interface TurnButtonProps {
  /** Where the scene is asked for. */
  readonly address: string;
  /** Sent there where it is about something that is not saved. */
  readonly body?: string;
  /** What is shown: `the piece`, `repeat unit, step 3`. */
  readonly what: string;
}

interface Opened {
  readonly View: ComponentType<{ readonly scene: Scene; readonly isMirrored: boolean }>;
  readonly scene: Scene;
  readonly isMirrored: boolean;
}

const ask = (address: string, body: string | undefined): Promise<Response> =>
  body === undefined
    ? fetch(address)
    : fetch(address, { method: 'POST', headers: { 'content-type': 'application/json' }, body });

export function TurnButton({ address, body, what }: TurnButtonProps) {
  const [isScripted, setIsScripted] = useState(false);
  const [opened, setOpened] = useState<Opened | null>(null);
  const [state, setState] = useState<'idle' | 'loading' | 'failed'>('idle');
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => setIsScripted(true), []);
  useEffect(() => {
    if (opened && !dialog.current?.open) dialog.current?.showModal();
  }, [opened]);
  const open = async (button: HTMLElement) => {
    const isMirrored = button.closest('[data-mirrored]') !== null;
    setState('loading');
    try {
      const [{ TurnedView }, answer] = await Promise.all([
        import('./turned-view.client.tsx'),
        ask(address, body),
      ]);
      if (!answer.ok) throw new Error(`${answer.status}`);
      setOpened({ View: TurnedView, scene: (await answer.json()) as Scene, isMirrored });
      setState('idle');
    } catch {
      setState('failed');
    }
  };
  if (!isScripted) return null;
  return (
    <>
      <button
        type="button"
        className={`quiet ${styles['turn']}`}
        aria-disabled={state === 'loading' || undefined}
        onClick={(event) => void (state === 'loading' || open(event.currentTarget))}
      >
        {state === 'loading' ? 'Loading…' : 'Turn it'}
        <span className="unseen">: {what}</span>
      </button>
      {state === 'failed' && (
        <p role="alert" className="fault">
          The view that turns could not be loaded. The picture here shows the same; try again in a moment.
        </p>
      )}
      {opened && (
        <dialog
          ref={dialog}
          className={styles['sheet']}
          aria-label={`Turn ${what}`}
          onClose={() => setOpened(null)}
        >
          <div className={styles['top']}>
            <h2>Turn {what}</h2>
            <button type="button" className="quiet" onClick={() => dialog.current?.close()}>
              Close
            </button>
          </div>
          <opened.View scene={opened.scene} isMirrored={opened.isMirrored} />
        </dialog>
      )}
    </>
  );
}
