/** Words for measured samples. */
import type { SampleFault } from '#lib/kit/sample-fit.ts';
import { figure } from './ring-words.ts';

export function sampleFaultWords(fault: SampleFault): string {
  switch (fault.code) {
    case 'pieces-too-few':
      return 'Pieces of different counts of repeats are needed.';
    case 'pieces-disagree':
      return `The pieces do not go together: they would make a repeat ${figure(fault.perRepeatMm, 2)} mm and the ends ${figure(fault.endsMm, 2)} mm. A piece of more repeats must be longer, and the ends cannot be less than nothing. Look at the counts and lengths.`;
  }
}
