// The page of the kit: is it ready, what is to be mended next, where it is found; and what staff do with it.

import { Frame, StaffOnly, startPage } from "../frame_staff";
import { KitAddress } from "../parts/kit_address";
import { MakeCards } from "../parts/kit_cards";
import { KitFindings } from "../parts/kit_findings";
import { useKit } from "../parts/kit_looking";
import { LampsTest } from "../parts/kit_lamps";
import { AllRecords } from "../parts/kit_records";

function KitPage() {
  const looking = useKit();
  return (
    <Frame here="/kit">
      <KitFindings looking={looking} />
      {looking.kit && <KitAddress kit={looking.kit} />}
      <StaffOnly>
        {() => (
          <>
            {looking.kit?.panel !== "none" && <LampsTest />}
            <MakeCards lack={looking.kit?.cards_lack ?? null} />
            <AllRecords />
          </>
        )}
      </StaffOnly>
    </Frame>
  );
}

startPage(KitPage);
