// What there is to see of a practical in portions: the curve, the readings, and what comes after.

import { After, CurveFigure } from "../../bench/curves";
import { Readings } from "../../bench/readings";
import type { PortionsView } from "../../live/contract";
import type { SeeingProps } from "../seeing";

export function Seeing(props: SeeingProps<PortionsView>) {
  return (
    <>
      <CurveFigure {...props} />
      <Readings view={props.view} />
      <After view={props.view} />
    </>
  );
}
