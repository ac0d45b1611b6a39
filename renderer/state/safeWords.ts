/** The last line of what is said when something does not go through: what is safe, and what to do. */
export const SAFE_WORDS = {
  /** work was refused for what it was given */
  unchanged: 'Nothing on the bench was changed. Put this right and try again.',
  /** a project is not opened */
  leftAlone: 'Its files were not touched, and what was on the bench is still there. Put this right and open it again.',
  /** a project or a paper is not written */
  stillHere: 'All of it is still on the bench; files are written whole or not at all. Put this right and save again.',
  /** a stretch is not locked */
  staysFree: 'The hose stays as it lies, and may move there. Mark another stretch.',
  /** a row of points is not read */
  pointsKept: 'The points taken so far are kept. Put the file right, or pick the points along the rod in the bay.',
  /** a table of parts is not read or written */
  drawerKept: 'The drawer is as it was. Put the table right and try again.',
  /** a scan is not read */
  notRead:
    'The bench is as it was. Choose the mesh again, or write it out as STL, PLY, OBJ, GLB or glTF and choose that.',
  /** a scan is read, with doubts */
  wellRead: 'Go on with it, or leave it, mend the scan and bring it in again.',
} as const;
