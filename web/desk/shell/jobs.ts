// What takes long and goes on while one does something else: how far it has come, and how to stop it.
import { signal } from "@preact/signals";

export interface Job {
  number: number;
  words: string;
  done?: number;
  of?: number; // not stated where nobody knows how much there is
  cancel?(): void;
}
export interface JobHandle {
  told(news: { words?: string; done?: number; of?: number }): void;
  end(): void;
}

export const jobs = signal<Job[]>([]);
let numbers = 0;

export function beginJob(words: string, cancel?: () => void): JobHandle {
  const number = ++numbers;
  jobs.value = [...jobs.peek(), { number, words, ...(cancel ? { cancel } : {}) }];
  return {
    told: (news) => (jobs.value = jobs.peek().map((job) => (job.number === number ? { ...job, ...news } : job))),
    end: () => (jobs.value = jobs.peek().filter((job) => job.number !== number)),
  };
}
