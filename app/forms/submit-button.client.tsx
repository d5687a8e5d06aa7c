'use client';
import { type ReactNode, useSyncExternalStore } from 'react';
import { useFormState } from './form-state.client.tsx';
import styles from './forms.module.css';

const never = () => () => {};

interface Props {
  readonly busy: string;
  readonly tone?: 'quiet' | 'alarm' | undefined;
  readonly children: ReactNode;
}

/** Takes no click before the page's script is there, and none while it is at work. */
export function SubmitButton({ busy, tone, children }: Props) {
  const state = useFormState();
  const awake = useSyncExternalStore(
    never,
    () => true,
    () => false,
  );
  return (
    <button
      type="submit"
      className={[tone, awake ? '' : styles['waking']].filter(Boolean).join(' ')}
      disabled={!awake}
      aria-disabled={state.busy || undefined}
    >
      {state.busy ? busy : children}
    </button>
  );
}
