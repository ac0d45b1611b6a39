import { VEHICLES } from '../../../shared/document/project/schema.ts';
import { VEHICLE_WORDS } from '../../../shared/document/wording/serviceWords.ts';
import { setVehicle } from '../../state/edits/vehicleEdits.ts';
import { useBench, useDocument } from '../../state/useBench.ts';
import { Choice } from '../../widgets/Choice.tsx';

/** Whose bay it is, for the checks that ask: metals in salt air, petrol hose on a boat, how long a hose lives. */
export function VehicleChoice() {
  const { document } = useBench();
  const vehicle = useDocument(({ open }) => open?.history.present.vehicle);
  return (
    <Choice
      label="It is the bay of"
      value={vehicle ?? ''}
      options={[{ value: '', label: 'not said' }, ...VEHICLES.map((value) => ({ value, label: VEHICLE_WORDS[value] }))]}
      onChoose={(value) =>
        document.edit('whose bay it is', (project) =>
          setVehicle(
            project,
            VEHICLES.find((one) => one === value),
          ),
        )
      }
    />
  );
}
