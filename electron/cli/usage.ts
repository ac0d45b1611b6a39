export const USAGE = `hosewright: lays hose in a scanned bay and says how long to cut it and how to clock it

  hosewright lay    PROJECT [--run NAME]... [--out DIR] [--json]   lay the runs and check them
  hosewright trial  PROJECT --run NAME [--lay REPORT.json] [--out DIR] [--json]
                                                                   lay one run with every pair of ends that fits, best first
  hosewright relay  PROJECT --run NAME --lay REPORT.json [--pull MM,X,Y,Z] [--move PORT,X,Y,Z]... [--out DIR] [--json]
                                                                   lay one run again near where it lies, as the project is
                                                                   now; or show it with a place pulled aside or a port moved
  hosewright check  PROJECT --lay REPORT.json [--json]             check earlier lays against the project as it is now
  hosewright sheets PROJECT [--run NAME]... [--lay REPORT.json] [--out DIR]
                                                                   draw the papers; lays the runs first without --lay
  hosewright schema [project|lay-report|end-trial|part-tables]     print a file format as JSON Schema
  hosewright serve  [PROJECT | --example] [--port N]               the window in a browser, on this machine only

  PROJECT      a project file or the folder of its project.json
  --run NAME   only this run (its id); may be given again
  --pull MM,X,Y,Z    the hose, so many mm from shoulder A, is held at X,Y,Z (mm, bay frame) with its direction free
  --move PORT,X,Y,Z  the port's seat is at X,Y,Z instead
  --out DIR    where to write: lay-report.json, or the papers (default for sheets: papers)
  --json       print the lay report and nothing else
  --help, --version

  Exit code    0 clean; 1 a finding forbids cutting, a run has no lay, or no ends fit; 2 the input is wrong

The program advises; it never certifies a hose.
`;
