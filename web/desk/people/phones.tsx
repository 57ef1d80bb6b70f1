// Every phone that was ever paired: whose it is, when it was last in touch, and the way to shut it out at once.
import { useState } from "preact/hooks";
import type { Device } from "../../shared/api.ts";
import { moment } from "../../shared/words/words.ts";
import { ask } from "../api/ask.ts";
import { Of, useAsked } from "../api/asked.tsx";
import { Empty, named } from "../shell/parts.tsx";
import { Sure } from "../shell/sure.tsx";
import { type Column, Table } from "../shell/table.tsx";
import { announce } from "../shell/announce.ts";
import { say } from "./words.ts";

export function PhonesPart() {
  const devices = useAsked("devices", {});
  const accounts = useAsked("accounts", {});
  const [lost, setLost] = useState<Device | undefined>();
  const owner = ({ account }: Device): string => accounts.said?.accounts.find((one) => one.account === account)?.name ?? "";
  const shown = (device: Device) => <bdi>{named(owner(device), say("phones.somebody"))}</bdi>;
  const columns: Column<Device>[] = [
    { key: "owner", heading: say("phones.owner"), names: true, cell: shown, value: owner },
    { key: "label", heading: say("phones.label"), cell: ({ label }) => <bdi>{named(label, "…")}</bdi>, value: ({ label }) => label },
    { key: "paired", heading: say("phones.paired"), cell: ({ paired }) => moment(paired), value: ({ paired }) => paired },
    { key: "seen", heading: say("phones.seen"), cell: ({ seen }) => (seen ? moment(seen) : say("phones.never")), value: ({ seen }) => seen ?? "" },
    { key: "revoked", heading: say("phones.standing"), cell: (device) => (device.revoked ? say("phones.revoked") : say("phones.in")), value: ({ revoked }) => Number(revoked) },
    {
      key: "shut", heading: say("phones.lost"),
      cell: (device) =>
        device.revoked ? null : (
          <button type="button" aria-label={say("phones.shut_of", { name: named(owner(device), device.device) })} onClick={() => setLost(device)}>
            {say("phones.shut")}
          </button>
        ),
    },
  ];
  const shut = async () => {
    const answer = await ask("revoke-device", { device: lost!.device });
    if (!answer.ok) return answer;
    announce(say("phones.is_shut"));
    await devices.again();
    return undefined;
  };
  return (
    <>
      <p class="soft">{say("phones.what")}</p>
      <Of asked={devices}>
        {(said) =>
          said.devices.length > 0 ? (
            <Table caption={say("part.phones")} columns={columns} rows={said.devices} rowKey={({ device }) => device} />
          ) : (
            <Empty title={say("phones.none")}>
              <p>{say("phones.none_what")}</p>
            </Empty>
          )
        }
      </Of>
      {lost ? (
        <Sure title={say("phones.sure")} button={say("phones.shut")} act={shut} onClose={() => setLost(undefined)}>
          <p>{shown(lost)}</p>
          <p>{say("phones.follows")}</p>
        </Sure>
      ) : null}
    </>
  );
}
