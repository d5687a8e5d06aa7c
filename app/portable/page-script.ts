/**
 * The script of a page that stands alone. Without it, a link to a moment opens
 * the recording there; with it, the player on the page goes there. Captions
 * are made from the transcript on the page, since a browser fetches no caption
 * file for a page from disk.
 */
export const PAGE_SCRIPT = `
(() => {
  const player = document.querySelector('#recording');
  if (!player) return;
  const cues = [...document.querySelectorAll('[data-from]')];
  if (cues.length > 0) {
    const track = player.addTextTrack('captions', 'Captions', document.documentElement.lang);
    for (const said of cues) {
      const text = said.querySelector('p').textContent.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
      track.addCue(new VTTCue(said.dataset.from / 1000, said.dataset.to / 1000, text));
    }
    track.mode = player.tagName === 'VIDEO' ? 'showing' : 'hidden';
  }
  document.addEventListener('click', (event) => {
    const link = event.target.closest('a[data-at]');
    if (!link || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    player.currentTime = link.dataset.at / 1000;
    player.play().catch(() => {});
    player.scrollIntoView({ block: 'nearest' });
    player.focus({ preventScroll: true });
  });
  const mirror = document.querySelector('#mirror');
  if (mirror) {
    mirror.hidden = false;
    mirror.addEventListener('click', () => {
      const on = document.body.toggleAttribute('data-mirrored');
      mirror.setAttribute('aria-pressed', String(on));
    });
  }
  const chapters = [...document.querySelectorAll('.chapters a')];
  player.addEventListener('timeupdate', () => {
    const now = chapters.filter((link) => link.dataset.at / 1000 <= player.currentTime + 0.05).pop();
    for (const link of chapters) {
      if (link === now) link.setAttribute('aria-current', 'true');
      else link.removeAttribute('aria-current');
    }
  });
})();
`;
