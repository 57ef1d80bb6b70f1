// Fields of a document: what stands in them is what will be written.
import { Field } from "../shell/parts.tsx";

interface TextProps {
  label: string;
  hint?: string;
  value: unknown;
  type?: "text" | "date" | "time";
  onChange: (value: string) => void;
}

export function TextField({ label, hint, value, type = "text", onChange }: TextProps) {
  return (
    <Field label={label} {...(hint ? { hint } : {})}>
      {(given) => <input {...given} type={type} value={typeof value === "string" ? value : ""} onInput={(event) => onChange(event.currentTarget.value)} autocomplete="off" />}
    </Field>
  );
}

interface NumberProps {
  label: string;
  hint?: string;
  value: unknown;
  least: number;
  most: number;
  step?: number;
  onChange: (value: number | undefined) => void;
}

export function NumberField({ label, hint, value, least, most, step = 1, onChange }: NumberProps) {
  const read = (text: string) => onChange(text === "" || Number.isNaN(Number(text)) ? undefined : Number(text));
  return (
    <Field label={label} {...(hint ? { hint } : {})}>
      {(given) => <input {...given} type="number" min={least} max={most} step={step} value={typeof value === "number" ? value : ""} onInput={(event) => read(event.currentTarget.value)} />}
    </Field>
  );
}
