'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { TextField } from '#app/forms/field.client.tsx';
import { JsonForm } from '#app/forms/json-form.client.tsx';
import { MadeAddress } from '#app/forms/made-address.client.tsx';
import { ROLE_WORDS } from '#app/words/roles.ts';
import { ROLES } from '#lib/access/caller.ts';
import styles from './members.module.css';

/** Makes a one-time address and shows it, once. */
export function InviteForm({ workshop }: { workshop: string }) {
  const router = useRouter();
  const [made, setMade] = useState<string | null>(null);
  return (
    <>
      <JsonForm
        to={`/api/workshops/${encodeURIComponent(workshop)}/invitations`}
        submit="Make an address"
        busy="Making it…"
        label="Invite somebody"
        done={(answer, form) => {
          if (typeof answer === 'object' && answer !== null && 'address' in answer)
            setMade(String(answer.address));
          form.reset();
          router.refresh();
        }}
      >
        <TextField
          name="note"
          label="For whom"
          hint="For your own list; the person does not see it."
          autoComplete="off"
        />
        <fieldset>
          <legend>As</legend>
          {ROLES.map((role) => (
            <label key={role} className={styles['choice']}>
              <input type="radio" name="role" value={role} defaultChecked={role === 'editor'} />
              <span>
                <strong>{ROLE_WORDS[role].name}</strong>
                <br />
                {ROLE_WORDS[role].may}
              </span>
            </label>
          ))}
        </fieldset>
      </JsonForm>
      {made && <MadeAddress key={made} address={made} />}
    </>
  );
}
