// The types of the engine's answers, written from docs/schema by the build, under the names used here.
export type * from "answers/ladder";
export type { CardsAnswer } from "answers/cards";
export type { ExaminationAnswer } from "answers/examination";
export type { NamesRow, NextRow, ReadingsRow, RecordedRow, SolventsRow } from "answers/rows";
