package org.boostwright.rig.logs.identify;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.boostwright.rig.plant.PlantParams;

/**
 * The virtual car that resembles a user's car, with how sure that is.
 *
 * @param start car the fit began with
 * @param point fitted point, see {@link TwinParameters}
 * @param root lower triangular root of the point's covariance
 * @param rmsKpa recorded minus fitted pressure, root mean square, kPa
 * @param pulls pulls used
 */
@SuppressWarnings("ArrayRecordComponent") // never handed out
public record CarTwin(
    PlantParams start, double[] point, double[][] root, double rmsKpa, int pulls) {

  /** A fit this far off explains nothing, kPa. */
  public static final double WORST_RMS_KPA = 6.0;

  /** The fitted car. */
  public PlantParams car() {
    return TwinParameters.apply(start, point);
  }

  /** Close enough to the recorded car to be reasoned with. */
  public boolean resembles() {
    return rmsKpa <= WORST_RMS_KPA;
  }

  /** Cars that the logs leave possible. */
  public List<PlantParams> draws(int count, long seed) {
    Random random = new Random(seed);
    List<PlantParams> cars = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double[] step = new double[point.length];
      for (int j = 0; j < step.length; j++) {
        step[j] = random.nextGaussian();
      }
      double[] drawn = point.clone();
      for (int r = 0; r < drawn.length; r++) {
        for (int c = 0; c <= r; c++) {
          drawn[r] += root[r][c] * step[c];
        }
      }
      cars.add(TwinParameters.apply(start, drawn));
    }
    return cars;
  }
}
