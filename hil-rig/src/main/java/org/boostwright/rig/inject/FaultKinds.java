package org.boostwright.rig.inject;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Every kind of fault the rig can bring about on the virtual car. */
public final class FaultKinds {
  private static final Map<String, FaultKind> KINDS = kinds();

  private FaultKinds() {}

  private static Map<String, FaultKind> kinds() {
    List<FaultKind> all = new ArrayList<>(SensorFaults.all());
    all.addAll(CarFaultKinds.all());
    all.addAll(RuntimeFaults.all());
    Map<String, FaultKind> byId = new LinkedHashMap<>();
    for (FaultKind kind : all) {
      if (byId.put(kind.id(), kind) != null) {
        throw new IllegalStateException("two faults are called " + kind.id());
      }
    }
    return byId;
  }

  /** All of them, in the order of the fault list's areas. */
  public static List<FaultKind> all() {
    return List.copyOf(KINDS.values());
  }

  /** Their ids. */
  public static List<String> ids() {
    return List.copyOf(KINDS.keySet());
  }

  /** The kind with this id. */
  public static Optional<FaultKind> find(String id) {
    return Optional.ofNullable(KINDS.get(id));
  }
}
