'use client';
import { enterWorkshop } from '#app/forms/enter-workshop.ts';
import { TextField } from '#app/forms/field.client.tsx';
import { JsonForm } from '#app/forms/json-form.client.tsx';

export function CreateWorkshopForm() {
  return (
    <JsonForm
      to="/api/workshops"
      submit="Make the workshop"
      busy="Making it…"
      tone="quiet"
      done={enterWorkshop}
    >
      <TextField name="name" label="Name of the workshop" required />
    </JsonForm>
  );
}
