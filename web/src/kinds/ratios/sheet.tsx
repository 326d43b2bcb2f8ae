// Mixing ratios on the record sheet: results, graph, table of mixtures.

import { rounded } from "../../format";
import { cm3Places, plusMinus } from "../../phrases/quantities";
import { phrase, said } from "../../words";
import { type Column, type GraphProps, type NumbersProps, type Sheet, enthalpy, followed, refused } from "../sheet";
import { RisesFigure, RisesTable } from "./drawing";
import { type Found, type RatiosView, ratioText } from "./view";

function column(name: string, found: Found, remark: string): Column {
  const { alkali_per_acid, u_alkali_per_acid: u, interval_95_ratio: [low, high], end_point_cm3, u_end_point_cm3: u_cm3 } = found;
  const crossing = phrase("page-record-end-point", { volume: rounded(end_point_cm3, cm3Places(u_cm3)), u: plusMinus(u_cm3, cm3Places(u_cm3)) });
  return {
    name,
    number: phrase("page-ratios-record", { ratio: ratioText(alkali_per_acid, u), u: ratioText(u, u) }),
    interval: phrase("page-ratios-interval", { low: ratioText(low, u), high: ratioText(high, u) }),
    more: [
      [phrase("page-ratios-crossing"), crossing],
      ...followed(found.enthalpy_of === null ? phrase("page-record-enthalpy") : phrase("page-enthalpy-of", { what: said(found.enthalpy_of) }), found.enthalpy_kj_mol, found.u_enthalpy_kj_mol, enthalpy),
    ],
    remark,
  };
}

function columns({ result }: RatiosView): Column[] {
  if (!result) return [];
  const { straight_lines: lines, heat_balance: heat } = result;
  const [byLines, byHeat] = [phrase("page-record-straight"), phrase("page-record-heat")];
  return [
    ...(lines ? [column(byLines, lines, phrase("page-ratios-scatter-only"))] : refused(byLines, result.refused.straight_lines)),
    ...(heat ? [column(byHeat, heat, heat.describes_trace === false ? phrase("page-not-described") : phrase("page-heat-once-knows"))] : refused(byHeat, result.refused.heat_balance)),
  ];
}

const Graph = ({ view, paper_px, tall = false }: GraphProps<RatiosView>) => <RisesFigure view={view} width={paper_px} large={tall} />;

const Numbers = ({ view }: NumbersProps<RatiosView>) => (
  <div class="record-readings">
    <RisesTable view={view} />
  </div>
);

export const sheet: Sheet<RatiosView> = { columns, Graph, Numbers };
