/** The mark of the house: two linked rings whose overlap is a leaf. */
export function Mark({ size = 32 }: { size?: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 40 40" aria-hidden="true" focusable="false">
      <g transform="rotate(-38 20 20)" fill="none" strokeWidth="3">
        <path d="M20 10.6a12 12 0 0 1 0 18.8a12 12 0 0 1 0-18.8Z" fill="var(--verdigris)" stroke="none" />
        <path d="M20 10.6v18.8" stroke="var(--sheet)" strokeWidth="1" />
        <circle cx="12.5" cy="20" r="12" stroke="var(--copper)" />
        <circle cx="27.5" cy="20" r="12" stroke="var(--ink)" />
        {/* The first ring passes over the second at one of the two crossings. */}
        <path d="M16.5 8.7a12 12 0 0 1 6 4.6" stroke="var(--copper)" />
      </g>
    </svg>
  );
}
