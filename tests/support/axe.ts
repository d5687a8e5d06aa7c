/** axe, looking at a page where it stands. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/**
 * Without the second, empty page in which axe otherwise finishes its work: that
 * one guards what is found in frames of other sites, and none of ours has any.
 */
// Only faults are worked out to the last selector: what passes is counted by nobody.
export const axeOn = (page: Page): AxeBuilder =>
  new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode();
