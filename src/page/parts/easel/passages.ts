// The passages and layers that may lie under a swab, by the names of the job.
import { computed } from "@preact/signals";
import { parse } from "yaml";
import { jobText } from "../../state";

interface Named { name?: unknown; role?: unknown }

const entries = (value: unknown): Named[] => (Array.isArray(value) ? value.filter((one): one is Named => typeof one === "object" && one !== null) : []);

export const passages = computed<string[]>(() => {
  try {
    const job = parse(jobText.value) as { layers?: unknown; passages?: unknown } | null;
    const kept = entries(job?.layers).filter((one) => one.role === "keep");
    const names = [...entries(job?.passages), ...kept].map((one) => one.name);
    return [...new Set(names.filter((name): name is string | number => typeof name === "string" || typeof name === "number").map(String))];
  } catch {
    return []; // the job's faults are told where it is edited
  }
});
