// Titles, axes and legends of the charts.

import { fixed } from "../format";

export const charts = {
  volumeChart: "Temperature against volume added",
  timeChart: (portion: number) =>
    portion === 0 ? "Before the first portion" : `Since portion ${portion} went in`,
  temperatureAxis: "temperature / °C",
  volumeAxis: "volume of alkali added / cm³",
  sincePourAxis: "time since the pour / s",
  sinceStartAxis: "time since the start / s",
  repeatName: (repeat: number) => `repeat ${repeat}`,
  mean: "mean",
  lineBefore: "line before",
  lineAfter: "line after",
  crossing: "crossing",
  settledAt: (temperature_c: number) => `settled at ${fixed(temperature_c, 2)} °C`,
  volumeChartText: (points: number) =>
    points === 0 ? "No readings yet." : `${points} readings; the table below gives them all.`,
};
