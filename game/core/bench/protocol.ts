import type {
  AidsInUse,
  DeviceInfo,
  HandFaults,
  Origin,
  Recording,
  SimulationOptions,
  Trainee,
  WeaveOptions,
} from '../../../engine/index.ts';
import type {
  CutFrame,
  EtchedCut,
  Exercise,
  Judgement,
  Language,
  OwnMarks,
  OwnReading,
  RootPlace,
  Station,
} from '../../../scoring/index.ts';
import type { TorchSample } from '../hand/sample.ts';
import type { Refusal } from '../session/problem.ts';

import type { PoseColumns } from './pose-chunk.ts';

/** What an attempt is besides its poses. */
export interface AttemptMeta {
  origin: Origin;
  device: DeviceInfo;
  aids: AidsInUse;
  trainee: Trainee | null;
  /** When the arc was struck, ISO 8601. */
  started: string;
  exercise: Exercise | null;
}

/** From the page to the bench. `job` counts attempts and openings; answers carry it, and the page drops answers to an old one. */
export type BenchRequest =
  | { type: 'prepare'; job: number; simulation: SimulationOptions }
  | { type: 'strike'; job: number; meta: AttemptMeta; samples: TorchSample[] }
  /** `until_ms`: no reading older than this is still to come. */
  | { type: 'samples'; samples: TorchSample[]; until_ms: number }
  | { type: 'finish'; at_ms: number }
  | { type: 'demonstrate'; job: number; meta: AttemptMeta; weave: WeaveOptions; faults: HandFaults }
  | { type: 'open'; job: number; recording: Recording }
  /** Welds what there is of an attempt that was never ended, and ends it. */
  | { type: 'recover'; job: number; recording: Recording }
  | { type: 'seek'; t_s: number | null }
  /** `id` tells the drawings on one page apart; `scale` is pixels per millimetre; `glass`: without a reading in it. */
  | { type: 'cut'; y_mm: number; id: string; scale: number; glass: boolean; language: Language }
  /** The cut of the finished piece with the stretch about it welded anew as `recording`. `turn` tells questions apart. */
  | { type: 'stretch'; turn: number; recording: Recording; y_mm: number; id: string; scale: number; language: Language }
  /** The cut as it lies under the glass, for measuring it oneself. */
  | { type: 'etched'; y_mm: number; scale: number }
  | { type: 'compareOwn'; y_mm: number; marks: OwnMarks }
  /** The report of the finished attempt, under the name of its file. */
  | { type: 'paper'; job: number; file: string; language: Language; inches: boolean }
  /** The cut of the finished piece as the command line draws it. */
  | { type: 'drawing'; y_mm: number }
  | { type: 'surfaceBack'; buffer: ArrayBuffer };

export interface SurfaceMessage {
  type: 'surface';
  job: number;
  /** Time in the attempt the picture shows. */
  t_s: number;
  nu: number;
  ny: number;
  u0_mm: number;
  du_mm: number;
  y0_mm: number;
  dy_mm: number;
  /** See SurfaceFrame.skin; goes back with `surfaceBack` to be filled again. */
  skin: ArrayBuffer;
  /** Trace rows since the last message (TraceLog columns). */
  trace: ArrayBuffer;
}

export type EndReason = Recording['ended'];

export interface CutMessage {
  type: 'cut';
  job: number;
  y_mm: number;
  scale: number;
  svg: string;
  frame: CutFrame;
  surface_mm: number[];
  station: Station | null;
}

export type BenchAnswer =
  | { type: 'ready'; engine: string }
  | SurfaceMessage
  | {
      type: 'ended';
      job: number;
      recording: Recording;
      /** State hash of the weld as made here. */
      hash: string;
      lag_s: number;
    }
  | { type: 'progress'; job: number; share: number }
  /** Said while welding, so that silence means something. */
  | { type: 'alive'; job: number }
  /** Poses of a hand's attempt as they are welded. `from`: number of the first. */
  | { type: 'poses'; job: number; from: number; poses: PoseColumns }
  | CutMessage
  /** `cut`: null where the arc never came there. */
  | { type: 'stretch'; job: number; turn: number; cut: CutMessage | null }
  | { type: 'etched'; job: number; y_mm: number; cut: EtchedCut | null }
  /** `refused`: why the marks make no fillet. */
  | { type: 'ownReading'; job: number; y_mm: number; reading: OwnReading | null; refused: Refusal | null }
  | { type: 'scored'; job: number; judgement: Judgement; strip: RootPlace[] }
  | { type: 'drawing'; job: number; y_mm: number; svg: string }
  /** A complete page of HTML. */
  | { type: 'paper'; job: number; html: string }
  | { type: 'failed'; job: number; doing: BenchRequest['type']; message: string };
