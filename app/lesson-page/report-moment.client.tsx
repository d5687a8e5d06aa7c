'use client';

import { useEffect, useRef } from 'react';
import { formatTimeCode } from '#lib/time/time-code.ts';

/** The moment that a report is about; filled in with where the recording stands, once the form is opened. */
export function ReportMoment() {
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    const field = input.current;
    const details = field?.closest('details');
    if (!field || !details) return;
    const fill = () => {
      const seconds =
        document.querySelector<HTMLMediaElement>('#player video, #player audio')?.currentTime ?? 0;
      if (details.open && field.value === '' && seconds > 0) field.value = formatTimeCode(seconds * 1000);
    };
    details.addEventListener('toggle', fill);
    return () => details.removeEventListener('toggle', fill);
  }, []);
  return (
    <div className="field">
      <label htmlFor="report-at">At which time, such as 2:15</label>
      <input
        ref={input}
        id="report-at"
        name="at"
        type="text"
        inputMode="text"
        autoComplete="off"
        maxLength={40}
        defaultValue=""
      />
    </div>
  );
}
