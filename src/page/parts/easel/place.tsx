// Where the swab was: tapped on the painting, or typed in cm from its lower left corner.
import { job } from "../../job/edit";
import { readings } from "../../state";
import { words } from "../../words/words";
import { Background } from "../background";
import { figure, numberOf } from "../figures";
import { paintingPhotograph } from "../photograph";
import { fill, valueOf } from "./test_card";
import { TextField } from "./tiles";

interface Size { width: number; height: number }

function Dots({ size }: { size: Size }) {
  const radius = Math.max(size.width, size.height) / 45;
  const earlier = readings.value.value?.readings ?? [];
  const [x, y] = [numberOf(valueOf("x_cm")), numberOf(valueOf("y_cm"))];
  return (
    <>
      {earlier.map((one, index) => one.x_cm !== null && one.y_cm !== null && !one.looked_after && (
        <g key={index} transform={`translate(${one.x_cm} ${size.height - one.y_cm})`}>
          <circle r={radius} class="earlier" />
          <text font-size={radius * 1.2} text-anchor="middle" dy={radius * 0.42}>{String(one.test)}</text>
        </g>
      ))}
      {x !== null && y !== null && (
        <path class="chosen" d={`M${x - radius * 1.6} ${size.height - y}h${radius * 3.2}M${x} ${size.height - y - radius * 1.6}v${radius * 3.2}`} />
      )}
    </>
  );
}

function Outline({ size }: { size: Size }) {
  const tap = (event: MouseEvent & { currentTarget: SVGSVGElement }) => {
    // By the drawing's own measure: a tall painting leaves white beside it.
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(event.currentTarget.getScreenCTM()?.inverse());
    const within = (value: number, most: number) => Math.min(most, Math.max(0, value)).toFixed(1);
    fill("x_cm", within(at.x, size.width));
    fill("y_cm", within(size.height - at.y, size.height));
  };
  const photograph = paintingPhotograph.value;
  return (
    <svg class="outline" viewBox={`0 0 ${size.width} ${size.height}`} aria-hidden="true" onClick={tap}>
      {photograph && <image href={photograph.address} width={size.width} height={size.height} preserveAspectRatio="none" />}
      <rect width={size.width} height={size.height} class="frame" />
      <Dots size={size} />
    </svg>
  );
}

export function Place() {
  const w = words.value.easel.where;
  const [width, height] = [job.value.object.width_cm, job.value.object.height_cm].map((typed) => numberOf(typed ?? ""));
  const size = width && height ? { width, height } : null;
  const [x, y] = [valueOf("x_cm"), valueOf("y_cm")];
  const clear = () => {
    fill("x_cm", "");
    fill("y_cm", "");
  };
  return (
    <fieldset class="place">
      <legend>{w.map}</legend>
      {size ? <Outline size={size} /> : <p class="soft">{w.noSize}</p>}
      <p role="status">{x && y ? w.chosen(figure(numberOf(x)) || x, figure(numberOf(y)) || y) : w.mapHint}</p>
      <div class="fields">
        <TextField of="x_cm" label={w.x_cm} inputMode="decimal" />
        <TextField of="y_cm" label={w.y_cm} inputMode="decimal" />
        {(x || y) && <button type="button" class="touch" onClick={clear}>{w.clear}</button>}
      </div>
      <details>
        <summary>{w.photograph}</summary>
        <p class="soft">{w.photographNote}</p>
        <Background label={w.photograph} />
      </details>
    </fieldset>
  );
}
