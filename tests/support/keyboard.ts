/** A person at the keyboard alone: no pointer, and no focus that a script sets. */
import type { Locator, Page } from 'playwright-core';

/** More stops than any screen has on the way to one of its controls. */
const MOST_STOPS = 250;

export interface Keyboard {
  /** Goes on with the Tab key (or another one) until the control has the focus. */
  to: (target: Locator, key?: 'Tab' | 'Shift+Tab') => Promise<void>;
  /** Goes to a control and presses Enter on it. */
  enter: (target: Locator) => Promise<void>;
  /** Goes to a field and writes into it, over what stands there. */
  write: (target: Locator, text: string) => Promise<void>;
  /** Goes to a list of choices and picks one by typing how it begins. */
  choose: (target: Locator, begins: string) => Promise<void>;
  /** Goes to a file field, opens it, and gives it this file. */
  bring: (target: Locator, file: string) => Promise<void>;
  press: (...keys: string[]) => Promise<void>;
  type: (text: string) => Promise<void>;
}

export function keyboardOf(page: Page): Keyboard {
  // From now on the browser tells of choosers instead of showing them; asked only then, it may come too late.
  page.on('filechooser', () => undefined);
  const press = async (...keys: string[]): Promise<void> => {
    for (const key of keys) await page.keyboard.press(key);
  };
  const type = (text: string): Promise<void> => page.keyboard.type(text);
  const to: Keyboard['to'] = async (target, key = 'Tab') => {
    // Found once, not at every stop: to find a control by its role and name, all of the page is gone through.
    let control = await target.elementHandle();
    for (let stops = 0; stops < MOST_STOPS; stops += 1) {
      const state = await control?.evaluate((element) =>
        element === document.activeElement ? 'there' : element.isConnected ? 'elsewhere' : 'gone',
      );
      if (state === 'there') return;
      if (state === 'gone') control = await target.elementHandle();
      else await page.keyboard.press(key);
    }
    throw new Error(`${key} never comes to ${target}`);
  };
  return {
    to,
    press,
    type,
    async enter(target) {
      await to(target);
      await press('Enter');
    },
    async write(target, text) {
      await to(target);
      await press('Control+a');
      await type(text);
    },
    async choose(target, begins) {
      await to(target);
      await type(begins);
    },
    async bring(target, file) {
      await to(target);
      const chooser = page.waitForEvent('filechooser');
      await press('Space');
      await (await chooser).setFiles(file);
    },
  };
}
