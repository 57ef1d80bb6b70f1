// One of a few, by name.
import { Field } from "../shell/parts.tsx";

interface ChoiceProps {
  label: string;
  hint?: string;
  fault?: string;
  value: string;
  options: [string, string][];
  onChange: (value: string) => void;
}

export function Choice({ label, hint, fault, value, options, onChange }: ChoiceProps) {
  return (
    <Field label={label} {...(hint ? { hint } : {})} {...(fault ? { fault } : {})}>
      {(given) => (
        <select {...given} value={value} onChange={(event) => onChange(event.currentTarget.value)}>
          {options.map(([key, words]) => (
            <option key={key} value={key}>
              {words}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
