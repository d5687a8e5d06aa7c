/** A reason to stop that is told to people in a sentence or two, without a stack. */
export class PlainFault extends Error {}
