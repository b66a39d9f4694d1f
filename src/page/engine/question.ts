// The one narrow way between the page and the engine: a question as the program's own command, an answer as it writes it.

/** One command of the program, e.g. {command: "ladder", words: ["job.yaml"], options: {format: "json"}, files: {...}}. */
export interface Question {
  command: string;
  words: string[];
  /** Without dashes; a switch is true. */
  options?: Record<string, string | true>;
  /** Files that the words and options name, by name; they exist for this question only. "studio/pears.yaml" lies in the folder "studio". */
  files?: Record<string, string | Uint8Array>;
}

/** One fault, at its place in the file that the question named. Line and column count from 1; 0: no place. */
export interface Fault {
  file: string;
  line: number;
  column: number;
  message: string;
  remedy: string;
}

export interface Answer {
  /** 0 done, 1 no window or a stop, 2 the question is wrong, 3 a file is wrong, 4 the engine failed. */
  exit: number;
  /** What the program would write to standard output: JSON, HTML, SVG or text. */
  text: string;
  /** What it would tell on standard error, e.g. lines of a log that cannot be read. */
  notes: string;
  faults: Fault[];
  /** Files of the question that the command changed: the log behind `record` and `import`. */
  files: Record<string, string>;
}

/** What the engine says while it works. */
export interface Progress {
  done: number;
  total: number;
}
