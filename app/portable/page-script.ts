/**
 * The script of a page that stands alone. Without it, a link to a moment opens
 * the recording there; with it, the player on the page goes there. Captions
 * are made from the transcript on the page, since a browser fetches no caption
 * file for a page from disk. Playing waits at each step where that is wished.
 */
export const PAGE_SCRIPT = `
(() => {
  const player = document.querySelector('#recording');
  if (!player) return;
  const cues = [...document.querySelectorAll('[data-from]')];
  let track = null;
  if (cues.length > 0) {
    track = player.addTextTrack('captions', 'Captions', document.documentElement.lang);
    for (const said of cues) {
      const text = said.querySelector('p').textContent.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
      track.addCue(new VTTCue(said.dataset.from / 1000, said.dataset.to / 1000, text));
    }
    track.mode = player.tagName === 'VIDEO' ? 'showing' : 'hidden';
  }
  // A file server that gives no parts of a file lets nobody jump in it: it is then taken whole, once.
  let whole = null;
  const reaches = (s) => player.seekable.length > 0 && player.seekable.end(player.seekable.length - 1) >= s;
  const take = async () => {
    const url = URL.createObjectURL(await (await fetch(player.currentSrc || player.src)).blob());
    const known = new Promise((done) => player.addEventListener('loadedmetadata', done, { once: true }));
    player.src = url;
    await known;
  };
  const seek = async (s) => {
    if (player.readyState > 0 && !reaches(s) && location.protocol.startsWith('http')) {
      whole ??= take().catch(() => {});
      await whole;
    }
    player.currentTime = s;
  };
  document.addEventListener('click', async (event) => {
    const link = event.target.closest('a[data-at]');
    if (!link || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    await seek(link.dataset.at / 1000);
    player.play().catch(() => {});
    player.scrollIntoView({ block: 'nearest' });
    player.focus({ preventScroll: true });
  });
  for (const wishes of document.querySelectorAll('.wishes')) wishes.hidden = false;
  document.querySelector('#mirror')?.addEventListener('click', (event) => {
    const on = document.body.toggleAttribute('data-mirrored');
    event.currentTarget.setAttribute('aria-pressed', String(on));
    player.controls = !on;
    own.hidden = !on;
    if (track) track.mode = on ? 'hidden' : 'showing';
  });
  // The browser's own controls and captions would be mirrored with the picture.
  const own = document.querySelector('#own');
  if (own) {
    const [line, go, place, clock] = own.children;
    const toggle = () => (player.paused ? player.play().catch(() => {}) : player.pause());
    const time = (s) => Math.floor(s / 60) + ':' + String(Math.floor(s % 60)).padStart(2, '0');
    const tell = () => {
      go.textContent = player.paused ? 'Play' : 'Pause';
      place.max = player.duration || 0;
      place.value = player.currentTime;
      clock.textContent = time(player.currentTime) + ' of ' + time(player.duration || 0);
      place.setAttribute('aria-valuetext', clock.textContent);
      line.textContent = [...(track?.activeCues ?? [])].map((cue) => cue.getCueAsHTML().textContent).join(' ');
    };
    for (const event of ['play', 'pause', 'seeked', 'timeupdate', 'loadedmetadata']) player.addEventListener(event, tell);
    track?.addEventListener('cuechange', tell);
    go.addEventListener('click', toggle);
    player.addEventListener('click', () => { if (!player.controls) toggle(); });
    place.addEventListener('input', () => seek(Number(place.value)));
    tell();
  }
  const hold = document.querySelector('#hold');
  const held = document.querySelector('#held');
  const steps = [...document.querySelectorAll('.steps a[data-at]')].map((link) => {
    const step = link.closest('li');
    const part = step.closest('section').querySelector('h2').textContent;
    const number = [...step.parentElement.children].indexOf(step) + 1;
    return { at: link.dataset.at / 1000, name: part + ', ' + number, step };
  });
  hold.hidden = steps.length === 0;
  hold.addEventListener('click', () => {
    const on = hold.getAttribute('aria-pressed') !== 'true';
    hold.setAttribute('aria-pressed', String(on));
    if (!on) held.textContent = '';
  });
  let last = 0;
  player.addEventListener('seeking', () => { last = player.currentTime; });
  player.addEventListener('play', () => { held.textContent = ''; });
  player.addEventListener('timeupdate', () => {
    const step = steps.find(({ at }) => at > last && at <= player.currentTime);
    last = player.currentTime;
    if (!step || player.paused || hold.getAttribute('aria-pressed') !== 'true') return;
    player.pause();
    const sentence = step.step.querySelector('.sentence').innerText;
    held.textContent = 'Holding at ' + step.name + ': ' + sentence + ' Play to go on.';
  });
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
