/** Where the system looks for programs. */
export const programPath = (): string => process.env['PATH'] ?? '/usr/local/bin:/usr/bin:/bin';
