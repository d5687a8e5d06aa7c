/** Words for measures that could not be used. */
import { formatMeasure, type MeasureFault } from '#lib/lesson/asked-measure.ts';

export function measureFaultWords(fault: MeasureFault): string {
  switch (fault.code) {
    case 'measure-not-read':
      return fault.text === ''
        ? 'Type your measure, for example 165 or 6 1/2.'
        : `“${fault.text}” could not be read as a length. Type a number such as 165, 16.5 or 6 1/2.`;
    case 'measure-out-of-range':
      return `A measure above 0 and up to ${formatMeasure(fault.mostMm, 'mm')} is needed.`;
    case 'length-within-ease':
      return `The finished length has to be more than the ${formatMeasure(fault.allowanceMm, 'mm')} that this piece needs for its ease and thickness.`;
  }
}
