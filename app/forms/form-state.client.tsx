'use client';
/** What fields and buttons of a form know about it. */
import { createContext, useContext } from 'react';

export interface FormState {
  /** What is wrong, by the name of the field. */
  readonly faults: Readonly<Record<string, string>>;
  readonly busy: boolean;
}

export const FormContext = createContext<FormState>({ faults: {}, busy: false });
export const useFormState = (): FormState => useContext(FormContext);
