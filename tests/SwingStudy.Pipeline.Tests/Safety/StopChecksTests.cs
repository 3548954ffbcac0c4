using NodaTime;
using SwingStudy.Domain.Protocols;
using SwingStudy.Pipeline.Safety;

namespace SwingStudy.Pipeline.Tests.Safety;

public sealed class StopChecksTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 9, 7, 8, 0);
    private static readonly LocalDate Monday = new(2026, 9, 7);

    [Theory]
    [InlineData("0 1 2", "")]
    [InlineData("0 1 4", "pain_nrs at least 4: 4; pain_nrs rise of 3: 4")]
    [InlineData("2 4", "pain_nrs at least 4: 4")]
    [InlineData("0 3 0", "pain_nrs rise of 3: 3")]
    public void ARatingStopsAtItsLimitAndAtItsRise(string ratings, string evidence)
    {
        var session = Session([], ratings.Split(' ').Select(double.Parse));
        Assert.Equal(evidence, Evidence(new StopRule("pain_nrs", 4, 3, "Reason."), session));
    }

    [Fact]
    public void ALimitBelowStopsToo() =>
        Assert.Equal("pain_nrs at most 1: 0.5", Evidence(new StopRule("pain_nrs", null, null, "Reason.") { AtMost = 1 }, Session([], [3, 0.5])));

    [Fact]
    public void SpeedThatFallsOverSomeSwingsStops()
    {
        var rule = new StopRule("club_head_speed", null, null, "Reason.") { FallPercent = 10, OverSwings = 3 };
        Assert.Equal("", Evidence(rule, Session(Speeds("bay", 40, 40, 40, 37, 37, 37), [])));
        Assert.Equal("club_head_speed fall over 3 swings, in per cent, 10", Evidence(rule, Session(Speeds("bay", 40, 40, 40, 36, 36, 36), [])));
        // Too few swings for both means; and two devices that disagree are no fall.
        Assert.Equal("", Evidence(rule, Session(Speeds("bay", 40, 40, 40, 30, 30), [])));
        Assert.Equal("", Evidence(rule, Session([.. Speeds("bay", 40, 40, 40, 40, 40, 40), .. Speeds("gate", 30, 30, 30, 30, 30, 30)], [])));
    }

    [Fact]
    public void SwingsAreCountedOnceHoweverManyDevicesSawThem()
    {
        var session = Session([.. Speeds("bay", 40, 40, 40), .. Speeds("gate", 39, 39)], []);
        Assert.Equal("", Evidence(Most(3), session));
        Assert.Equal("swings session  2", Evidence(Most(2), session));
    }

    [Fact]
    public void SwingsAtMaximumIntentAreCountedApartAndOverAWeek()
    {
        var rule = Most(3) with { Per = SwingSpan.Week, Intent = "maximum" };
        var sessions = new[] { 0, 3, 6, 7 }.Select(day => Session([.. Speeds("bay", 40, 41).Select(swing => swing with { Intent = "maximum" }), .. Speeds("bay", 38, 38)], []) with { Id = $"S{day}", Day = Monday.PlusDays(day) }).ToList();
        Assert.Equal("", Evidence(rule, sessions[0], sessions));
        Assert.Equal("swings week maximum 3", Evidence(rule, sessions[1], sessions));
        // Monday of the week after: Monday before is out, Thursday and Sunday are in.
        Assert.Contains("6 swings at maximum intent in the week", StopChecks.Find([rule], sessions[3], sessions).Single().Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void ASwingOfWhichNothingIsSaidWasMeantAsItsSession() =>
        Assert.Equal(2, (Session(Speeds("bay", 40, 41), []) with { Intent = "maximum" }).Count("maximum"));

    private static StopRule Most(int swings) => new(null, null, null, "Reason.") { MostSwings = swings };

    private static string Evidence(StopRule rule, WatchedSession session, IReadOnlyList<WatchedSession>? all = null) =>
        string.Join("; ", StopChecks.Find([rule], session, all ?? [session]).Select(stop => stop.Evidence));

    private static WatchedSession Session(IReadOnlyList<WatchedSwing> swings, IEnumerable<double> pain) => new("P01-20260907-1", Monday, swings,
        new Dictionary<string, IReadOnlyList<WatchedValue>> { ["pain_nrs"] = [.. pain.Select((value, i) => new WatchedValue(Start + Duration.FromMinutes(i), value))] }, null);

    private static List<WatchedSwing> Speeds(string source, params double[] speeds) =>
        [.. speeds.Select((speed, i) => new WatchedSwing(source, Start + Duration.FromMinutes(i), false, null, new Dictionary<string, double> { ["club_head_speed"] = speed }))];
}
