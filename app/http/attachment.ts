/** The header that makes a browser save an answer as a file of that name, whatever signs are in it (RFC 6266). */
export function attachment(name: string): string {
  const whole = name.toWellFormed();
  const plain = whole.replace(/[^\w .()-]/g, '_');
  const encoded = encodeURIComponent(whole).replace(
    /['()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16)}`,
  );
  return `attachment; filename="${plain}"; filename*=UTF-8''${encoded}`;
}
