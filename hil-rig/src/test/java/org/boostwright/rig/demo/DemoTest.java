package org.boostwright.rig.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsFile;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.result.Judgement;
import org.boostwright.rig.result.Measurement;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Verdict;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.PullRun;
import org.boostwright.rig.scenario.VirtualPull;
import org.junit.jupiter.api.Test;

class DemoTest {
  private static final Path CAR =
      Path.of(System.getProperty("boostwright.root"), "docs", "project-car.toml");

  @Test
  void wholeDemonstrationPassesAndSaysWhatItDoes() throws Exception {
    List<String> begun = new ArrayList<>();
    Demo demo =
        Demo.run(
            3,
            new Steps() {
              @Override
              public void begin(String what) {
                begun.add(what);
              }

              @Override
              public void share(double done) {}
            });
    assertThat(demo.result().measurements())
        .filteredOn(m -> m.judgement().fails())
        .as("failed measurements")
        .isEmpty();
    assertThat(demo.result().verdict()).isEqualTo(Verdict.PASSED);
    assertThat(begun).hasSize(9);
    assertThat(demo.result().series())
        .extracting(Plot::id)
        .containsExactly("sweep", "pulls", "open_loop", "closed_loop", "failure", "learning");
    String docs = Files.readString(CAR.resolveSibling("json.md"));
    for (Measurement m : demo.result().measurements()) {
      assertThat(docs.contains("`" + m.id() + "`")).as("%s is in docs/json.md", m.id()).isTrue();
    }
  }

  @Test
  void failureThatNeverHappenedIsNotPassed() {
    Settings settings = SettingsFile.load(CAR).orThrow();
    PullPlan plan = PullPlan.STANDARD.withEvents(new PullPlan.Event(1.0, faults -> {}));
    PullRun sound = VirtualPull.run(settings, PlantParams.PROJECT_CAR, plan, share -> {});
    ResultBuilder result = new ResultBuilder("demo");
    SensorFailure.judge(result, sound, sound);
    assertThat(result.build().measurement("demo.failure_rest_ms"))
        .get()
        .extracting(Measurement::judgement)
        .isEqualTo(Judgement.NOT_MEASURED);
    assertThat(result.verdict()).isEqualTo(Verdict.FAILED);
  }
}
