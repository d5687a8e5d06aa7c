'use client';
import { useRouter } from 'next/navigation';
import { SureDialog } from '#app/forms/sure-dialog.client.tsx';

/** Takes a batch out of the list. */
export function ForgetBatch({ to, title }: { readonly to: string; readonly title: string }) {
  const router = useRouter();
  return (
    <SureDialog
      opens={
        <>
          Forget…<span className="unseen"> {title}</span>
        </>
      }
      question="Forget this batch?"
      does="Forget it"
      to={to}
      method="DELETE"
      done={() => router.refresh()}
    >
      <p>{title}.</p>
      <p>
        You will no longer see what later revisions change in it. The codes on its labels go on working: the
        kits that are out do not need this list.
      </p>
    </SureDialog>
  );
}
