// The width that a drawing has, in CSS pixels: signs and letters keep their size, only lengths are drawn to scale.
import { useLayoutEffect, useRef, useState } from "preact/hooks";

export interface Measured {
  width: number;
  letter: number; // of the text around it
}

export function useMeasured<T extends HTMLElement>() {
  const ref = useRef<T>(null);
  const [measured, setMeasured] = useState<Measured>({ width: 0, letter: 18 });
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return undefined;
    const measure = () =>
      setMeasured({ width: element.clientWidth, letter: parseFloat(getComputedStyle(element).fontSize) });
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, ...measured };
}
