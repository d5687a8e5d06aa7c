'use client';
import { useRouter } from 'next/navigation';
import { ChoiceField } from '#app/forms/field.client.tsx';
import { JsonForm } from '#app/forms/json-form.client.tsx';
import { SureDialog } from '#app/forms/sure-dialog.client.tsx';
import { ROLE_WORDS } from '#app/words/roles.ts';
import { ROLES, type Role } from '#lib/access/caller.ts';
import styles from './members.module.css';

interface Props {
  readonly workshop: string;
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly isCaller: boolean;
}

const api = (workshop: string, part: string): string =>
  `/api/workshops/${encodeURIComponent(workshop)}/${part}`;

/** Role and removal of one member. */
export function MemberDoings({ workshop, id, name, role, isCaller }: Props) {
  const router = useRouter();
  const to = api(workshop, `members/${encodeURIComponent(id)}`);
  const goOn = () => (isCaller ? window.location.assign('/bench?all') : router.refresh());
  return (
    <div className={styles['doings']}>
      <JsonForm
        to={to}
        method="PATCH"
        submit="Save role"
        busy="Saving…"
        tone="quiet"
        label={`Role of ${name}`}
        className={styles['role']}
        done={goOn}
      >
        <ChoiceField
          name="role"
          label={<span className="unseen">Role of {name}</span>}
          defaultValue={role}
          options={ROLES.map((value) => ({ value, label: ROLE_WORDS[value].name }))}
        />
      </JsonForm>
      <SureDialog
        opens={
          <>
            Remove…<span className="unseen"> {name}</span>
          </>
        }
        question={isCaller ? 'Leave this workshop?' : `Remove ${name}?`}
        does={isCaller ? 'Leave it' : 'Remove'}
        to={to}
        method="DELETE"
        done={goOn}
      >
        <p>
          {isCaller ? 'You will' : `${name} will`} no longer see this workshop’s lessons. What was done in it
          stays. Only a new invitation undoes this.
        </p>
      </SureDialog>
    </div>
  );
}

/** Makes an address worthless that nobody has used. */
export function WithdrawInvitation({ workshop, id, note }: { workshop: string; id: string; note: string }) {
  const router = useRouter();
  return (
    <SureDialog
      opens={
        <>
          Withdraw…<span className="unseen"> the address {note && `for ${note}`}</span>
        </>
      }
      question="Withdraw this address?"
      does="Withdraw"
      to={api(workshop, `invitations/${encodeURIComponent(id)}`)}
      method="DELETE"
      done={() => router.refresh()}
    >
      <p>Whoever opens it from now on is told that it is no longer open.</p>
    </SureDialog>
  );
}
