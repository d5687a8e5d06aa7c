/**
 * Puts a text into the clipboard. Of HTML, an editor that shows text as it will
 * look takes the HTML as such; every other field gets what is written.
 * @throws DOMException where the browser does not allow it
 */
export async function toClipboard(text: string, isHtml: boolean): Promise<void> {
  if (!isHtml || typeof ClipboardItem === 'undefined') return navigator.clipboard.writeText(text);
  const as = (type: string) => ({ [type]: new Blob([text], { type }) });
  await navigator.clipboard.write([new ClipboardItem({ ...as('text/plain'), ...as('text/html') })]);
}
