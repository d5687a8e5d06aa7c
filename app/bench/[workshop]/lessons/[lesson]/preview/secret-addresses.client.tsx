'use client';
/** Secret addresses of the draft: made, shown once, listed, withdrawn. */
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { TextField } from '#app/forms/field.client.tsx';
import { JsonForm } from '#app/forms/json-form.client.tsx';
import { MadeAddress } from '#app/forms/made-address.client.tsx';
import { SureDialog } from '#app/forms/sure-dialog.client.tsx';
import { useDraft } from '../draft.client.tsx';
import styles from './preview.module.css';

interface SecretAddressesProps {
  readonly api: string;
  readonly addresses: readonly { readonly id: string; readonly note: string; readonly day: string }[];
}

export function SecretAddresses({ api, addresses }: SecretAddressesProps) {
  const router = useRouter();
  const { mayEdit } = useDraft();
  const [made, setMade] = useState<string | null>(null);
  return (
    <section className="panel" aria-labelledby="secret-title">
      <h2 id="secret-title">Show it to somebody who is no member</h2>
      <p>
        A secret address shows the draft as it stands, with its recording, to whoever has it. Search engines
        are told to leave it out. Once withdrawn, it leads nowhere.
      </p>
      {mayEdit ? (
        <JsonForm
          to={api}
          submit="Make a secret address"
          busy="Making it…"
          label="Secret address"
          done={(answer, form) => {
            if (typeof answer === 'object' && answer !== null && 'address' in answer)
              setMade(String(answer.address));
            form.reset();
            router.refresh();
          }}
        >
          <TextField name="note" label="For whom" hint="For your own list only." autoComplete="off" />
        </JsonForm>
      ) : (
        <p className="hint">Making one needs the role of an editor.</p>
      )}
      {made && <MadeAddress key={made} address={made} />}
      {addresses.length === 0 ? null : (
        <>
          <h3>In force</h3>
          <ul className={styles.addresses}>
            {addresses.map(({ id, note, day }) => (
              <li key={id}>
                <span>
                  {note === '' ? 'For nobody named' : note}, made on {day}
                </span>
                {mayEdit ? (
                  <SureDialog
                    opens={
                      <>
                        Withdraw…<span className="unseen"> {note}</span>
                      </>
                    }
                    question="Withdraw this address?"
                    does="Withdraw it"
                    to={`${api}/${id}`}
                    method="DELETE"
                    done={() => {
                      setMade(null);
                      router.refresh();
                    }}
                  >
                    <p>
                      Whoever has it then finds nothing there. It cannot be brought back; a new one can be
                      made.
                    </p>
                  </SureDialog>
                ) : null}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
