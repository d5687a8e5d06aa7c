'use client';
/**
 * A form that sends JSON and stays as it was typed when something is refused:
 * the fault is written at its field, or above the button, and gets the focus.
 */
import { type FormEvent, type ReactNode, useEffect, useRef, useState } from 'react';
import { accessFaultWords, fieldWords } from '#app/words/access-faults.ts';
import { FormContext } from './form-state.client.tsx';
import { sendJson } from './send-json.ts';
import { SubmitButton } from './submit-button.client.tsx';

export type Values = Readonly<Record<string, string>>;

interface Props {
  readonly to: string;
  readonly method?: 'POST' | 'PATCH' | 'DELETE';
  /** What is sent; left out: the fields by their names. */
  readonly body?: (values: Values) => unknown;
  /** Where a fault's field has another name in this form. */
  readonly fieldOf?: Readonly<Record<string, string>>;
  readonly done: (answer: unknown, form: HTMLFormElement) => void;
  readonly submit: string;
  readonly busy: string;
  readonly tone?: 'quiet' | 'alarm' | undefined;
  /** Name of the form, where the page has several. */
  readonly label?: string;
  readonly className?: string | undefined;
  readonly children?: ReactNode;
}

interface Wrong {
  readonly faults: Readonly<Record<string, string>>;
  readonly summary: string | null;
}
const NOTHING_WRONG: Wrong = { faults: {}, summary: null };

export function JsonForm(props: Props) {
  const form = useRef<HTMLFormElement>(null);
  const [busy, setBusy] = useState(false);
  const [wrong, setWrong] = useState<Wrong>(NOTHING_WRONG);

  useEffect(() => {
    if (wrong === NOTHING_WRONG) return;
    const first = form.current?.querySelector<HTMLElement>('[aria-invalid="true"]');
    (first ?? form.current?.querySelector<HTMLElement>('[role="alert"]'))?.focus();
  }, [wrong]);

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    if (busy) return;
    const target = event.currentTarget;
    const values = Object.fromEntries(
      [...new FormData(target)].map(([name, value]) => [name, String(value)]),
    );
    setBusy(true);
    const sent = await sendJson(props.to, props.method ?? 'POST', props.body ? props.body(values) : values);
    setBusy(false);
    if (!sent.ok) return setWrong(wrongOf(sent.code, sent.facts, props.fieldOf ?? {}));
    setWrong(NOTHING_WRONG);
    props.done(sent.answer, target);
  }

  return (
    <FormContext value={{ faults: wrong.faults, busy }}>
      {/* Without its script a browser must not put a password into an address: hence method="post". */}
      <form
        ref={form}
        method="post"
        noValidate
        onSubmit={(event) => void send(event)}
        aria-label={props.label}
        className={props.className}
      >
        {props.children}
        {wrong.summary !== null && (
          <div className="notice alarm" role="alert" tabIndex={-1}>
            <p>{wrong.summary}</p>
          </div>
        )}
        <SubmitButton busy={props.busy} tone={props.tone}>
          {props.submit}
        </SubmitButton>
      </form>
    </FormContext>
  );
}

function wrongOf(
  code: string,
  facts: Readonly<Record<string, unknown>>,
  fieldOf: Readonly<Record<string, string>>,
): Wrong {
  const named = (field: string): string => fieldOf[field] ?? field;
  const fields = facts['fields'];
  if (code === 'fields-not-valid' && Array.isArray(fields)) {
    return {
      faults: Object.fromEntries(fields.map((field) => [named(String(field)), fieldWords(String(field))])),
      summary: null,
    };
  }
  const { field, text } = accessFaultWords(code, facts);
  return field === null ? { faults: {}, summary: text } : { faults: { [named(field)]: text }, summary: null };
}
