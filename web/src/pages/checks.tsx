// Checks of the probe and of cups, one instruction at a time, and the register of probes.

import { useChecks } from "../checks";
import { Frame, startPage } from "../frame_staff";
import { ChooseCheck } from "../parts/check_choose";
import { Register } from "../parts/check_register";
import { RunCheck } from "../parts/check_run";
import { useSession } from "../parts/signing";
import { StaffSignIn } from "../parts/staff_sign_in";
import { isStaff } from "../session";
import { checkWords as words } from "../words/checks_topic";

function ChecksPage() {
  const watching = useChecks();
  const session = useSession();
  const { checks, silent, again } = watching;
  const staff = isStaff(session.standing?.role);
  const free = checks && !checks.check;
  return (
    <Frame here="/checks">
      <p>{words().intro}</p>
      <p class="caution">{words().first}</p>
      {silent && <p class="connecting">{words().silent}</p>}
      {checks?.check && <RunCheck watching={watching} staff={staff} />}
      {free && checks.under_way && <p class="check-part">{words().waits}</p>}
      {free && !checks.has_probe && <p class="check-part">{words().noProbe}</p>}
      {free && staff && !checks.under_way && checks.has_probe && <ChooseCheck again={again} />}
      {session.standing && !staff && (
        <section class="settings-part">
          <h2>{words().staff}</h2>
          <StaffSignIn session={session} />
        </section>
      )}
      {checks && <Register checks={checks} staff={staff} again={again} />}
    </Frame>
  );
}

startPage(ChecksPage);
