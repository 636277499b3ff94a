package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.replay.RecordReplay;
import org.boostwright.rig.replay.RecordRows;
import org.boostwright.rig.replay.csv.LogImport;
import org.boostwright.rig.replay.csv.LogMapping;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.boostwright.rig.replay.csv.LogSignal;

/** Reads logs to learn from. */
final class LogFiles {
  private LogFiles() {}

  /** Runs recorded by Boostwright as they are, any other log imported. */
  static List<DriveLog> read(List<Path> files, Progress progress)
      throws IOException, WrongUseException {
    List<DriveLog> logs = new ArrayList<>();
    progress.begin("reading logs", files.size());
    for (Path file : files) {
      try {
        if (RecordReplay.isRecord(LogImport.bytes(file))) {
          logs.add(DriveLog.ofRecord(file.toString(), RecordRows.read(file)));
        } else {
          logs.add(
              DriveLog.ofImport(
                  LogImport.read(file, LogMapping.NONE), LogSignal.THROTTLE, Double.NaN));
        }
      } catch (LogRefusedException e) {
        throw new WrongUseException(String.valueOf(e.getMessage()), "");
      }
      progress.at(logs.size());
    }
    return logs;
  }
}
