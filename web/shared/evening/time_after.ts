// '18:14' that many minutes after '18:00'.
export function timeAfter(start: string, minutes: number): string {
  const [hours = 0, minute = 0] = start.split(":").map(Number);
  const of_day = (((hours * 60 + minute + minutes) % 1440) + 1440) % 1440;
  return `${String(Math.floor(of_day / 60)).padStart(2, "0")}:${String(of_day % 60).padStart(2, "0")}`;
}
