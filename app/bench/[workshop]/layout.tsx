import { BenchHeader } from '#app/bench/bench-header.tsx';
import { memberPage } from '#app/http/member-page.ts';
import { findWorkshopsOf } from '#lib/access/session.ts';

/** Shows the head; each page below asks by itself who may see it. */
export default async function WorkshopLayout({ children, params }: LayoutProps<'/bench/[workshop]'>) {
  const { workshop } = await params;
  const at = await memberPage(workshop, 'viewer');
  return (
    <>
      <BenchHeader caller={at.caller} workshops={await findWorkshopsOf(at.caller)} at={at} />
      <div id="content" tabIndex={-1}>
        {children}
      </div>
    </>
  );
}
