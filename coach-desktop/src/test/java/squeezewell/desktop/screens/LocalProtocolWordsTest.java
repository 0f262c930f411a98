package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import squeezewell.cue.PracticePlan;
import squeezewell.desktop.screens.practice.PlanView;
import squeezewell.files.ProtocolStore;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolDetail;
import squeezewell.protocol.ProtocolDraft;
import squeezewell.protocol.ProtocolValue;
import squeezewell.protocol.Situation;
import squeezewell.report.ReviewHtml;
import squeezewell.report.SideBySide;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewText;
import squeezewell.session.SessionHeader;

/** A local protocol is told from a guideline wherever a person sees it. */
class LocalProtocolWordsTest {
  private static final String ORIGIN =
      "Local protocol: Standing orders, of A service, 2026; approved by the director on 2026-01-31."
          + " Based on AHA 2025, and differs from it.";

  private static final Protocol LOCAL = local("Standing orders");

  private static Protocol local(String title) {
    return ProtocolDraft.copyOf(
            Practices.protocol("aha-2025"),
            GuidelineLibrary.baseOf(Practices.protocol("aha-2025")),
            Set.of(),
            2026)
        .with(ProtocolDetail.TITLE, title)
        .with(ProtocolDetail.ORGANISATION, "A service")
        .with(ProtocolDetail.APPROVED_BY, "the director")
        .with(ProtocolDetail.APPROVED_ON, "2026-01-31")
        .with(0, ProtocolValue.BREATH_INTERVAL, "5")
        .with(0, ProtocolValue.BREATH_HIGH, "6")
        .protocol();
  }

  private static PracticePlan plan(Protocol protocol) {
    return Practices.plan(protocol, PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 0, 2);
  }

  private static Review review(Protocol protocol) {
    return Practices.review(protocol, plan(protocol), Practices.every(5));
  }

  @Test
  void theSetUpScreenSaysWhoseItIsAndWhereItDiffers() {
    // AHA 2025: one breath every 6 s; the range either side of it is our own choice.
    assertThat(PlanView.local(LOCAL, LOCAL.guidance().get(0), GuidelineLibrary.editions()))
        .containsExactly(
            ORIGIN,
            "Breath every 5 s here, 6 s in AHA 2025.",
            "Longest interval in range 6 s here, 7 s by this program's own choice.");
    Protocol guideline = Practices.protocol("aha-2025");
    assertThat(PlanView.local(guideline, guideline.guidance().get(0), GuidelineLibrary.editions()))
        .isEmpty();
  }

  @Test
  void theSituationsThatWereNotChangedAreTheGuidelines() {
    assertThat(PlanView.local(LOCAL, LOCAL.guidance().get(1), GuidelineLibrary.editions()))
        .containsExactly(ORIGIN.replace("and differs from it.", "with the same values."));
  }

  @Test
  void theDebriefSaysSoAsWell() {
    DebriefView view = DebriefView.of(review(LOCAL));
    assertThat(view.asked()).endsWith("(Standing orders, local protocol)");
    assertThat(view.local()).startsWith(ORIGIN).contains("Breath every 5 s here, 6 s in AHA 2025.");
    assertThat(DebriefView.of(review(Practices.protocol("aha-2025"))).local()).isEmpty();
  }

  @Test
  void theReportsSaySoAndEscapeWhatAServiceWrote() {
    Protocol hostile = local("<img src=x onerror=alert(1)>&\"'");
    Review review = review(hostile);
    SessionHeader header =
        new SessionHeader(
            Instant.parse("2026-03-01T09:00:00Z"),
            SessionHeader.Origin.LIVE,
            "",
            hostile,
            plan(hostile));
    String html = ReviewHtml.of(header, review, ZoneOffset.UTC);
    assertThat(html)
        .contains(
            "Local protocol: &lt;img src=x onerror=alert(1)&gt;&amp;&quot;&#39;, of A service")
        .contains("<li>breath every 5 s here, 6 s in AHA 2025</li>")
        .contains("<h2>Local protocol</h2>")
        .doesNotContain("<img");
    String text = ReviewText.write(review(LOCAL));
    assertThat(text.replaceAll("\\s+", " "))
        .contains("local protocol Standing orders, A service")
        .contains(ORIGIN)
        .contains("- breath every 5 s here, 6 s in AHA 2025");
    assertThat(text.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    assertThat(ReviewText.write(review(Practices.protocol("aha-2025"))))
        .contains("guideline")
        .doesNotContain("Local protocol");
  }

  @Test
  void sideBySideItSaysWhereItDiffersFromItsBase() {
    List<Protocol> all = new ArrayList<>(GuidelineLibrary.editions());
    all.add(LOCAL);
    SideBySide view =
        SideBySide.of(
            all, new SideBySide.Choice(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 0));
    assertThat(entry(view, "One breath every").change()).isEqualTo("Differs: 6 s in AHA 2025");
    assertThat(entry(view, "In range").change())
        .isEqualTo("Differs: 5 to 7 s by this program's own choice");
    assertThat(entry(view, "Squeeze for").change()).isEmpty();
    assertThat(Phrases.edition(entry(view, "One breath every").protocol()))
        .isEqualTo("Standing orders (2026), local protocol");
  }

  @Test
  void theListOfLocalProtocolsSaysWhereEachIsKept() {
    Path file = Path.of("protocols", "orders.json");
    ProtocolStore store =
        new ProtocolStore(
            List.of(Practices.protocol("aha-2025"), LOCAL), List.of(), Map.of(LOCAL.id(), file));
    assertThat(LocalProtocolsView.of(store).locals())
        .singleElement()
        .satisfies(
            local -> {
              assertThat(local.name()).isEqualTo("Standing orders");
              assertThat(local.lines()).startsWith(ORIGIN).endsWith("Kept in " + file);
              assertThat(local.file()).isEqualTo(file);
            });
  }

  private static SideBySide.Entry entry(SideBySide view, String name) {
    return view.values().stream()
        .filter(v -> v.name().equals(name))
        .flatMap(v -> v.entries().stream())
        .filter(e -> e.protocol().title().contains("Standing orders"))
        .findFirst()
        .orElseThrow();
  }
}
