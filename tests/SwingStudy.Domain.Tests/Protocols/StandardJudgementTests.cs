using SwingStudy.Domain.Protocols;

namespace SwingStudy.Domain.Tests.Protocols;

/// <summary>
/// Thresholds of the What Works Clearinghouse (technical documentation 1.0, 2010; handbook 4.1, 2020): withdrawal four phases, multiple baseline six,
/// five points each, three or four with reservations; alternating five points a condition and at most two in a row. From memory, but for the multiple
/// baseline.
/// </summary>
public sealed class StandardJudgementTests
{
    private static readonly DesignStandard Handbook = DesignStandard.Find("handbook-4.1")!;

    [Theory]
    [InlineData(5, 5, 5, 5, StandardRating.Meets)]
    [InlineData(5, 5, 4, 5, StandardRating.WithReservations)]
    [InlineData(3, 5, 5, 5, StandardRating.WithReservations)]
    [InlineData(5, 2, 5, 5, StandardRating.DoesNot)]
    [InlineData(5, 5, 5, 0, StandardRating.DoesNot)]
    public void AWithdrawalNeedsFourPhasesOfFivePoints(int first, int second, int third, int fourth, StandardRating rating) =>
        Assert.Equal(rating, StandardJudgement.Of(Handbook, DesignKind.Withdrawal, Phases("P01", first, second, third, fourth)).Rating);

    [Theory]
    [InlineData(3, 5, StandardRating.Meets)]
    [InlineData(3, 3, StandardRating.WithReservations)]
    [InlineData(3, 2, StandardRating.DoesNot)]
    [InlineData(2, 9, StandardRating.DoesNot)]
    public void AMultipleBaselineNeedsThreePlayersOfTwoPhases(int players, int points, StandardRating rating) => Assert.Equal(
        rating,
        StandardJudgement.Of(Handbook, DesignKind.MultipleBaseline, [.. Enumerable.Range(1, players).SelectMany(player => Phases($"P0{player}", points, points))]).Rating);

    [Theory]
    [InlineData(5, 2, StandardRating.Meets)]
    [InlineData(4, 2, StandardRating.WithReservations)]
    [InlineData(5, 3, StandardRating.DoesNot)]
    public void AnAlternationNeedsFivePointsAndShortRuns(int points, int longestRun, StandardRating rating) =>
        Assert.Equal(rating, StandardJudgement.Of(Handbook, DesignKind.Alternating, Phases("P01", points, points), longestRun).Rating);

    [Fact]
    public void BeforeAndAfterIsOneDemonstrationHoweverManyPointsItHas()
    {
        var judgement = StandardJudgement.Of(Handbook, DesignKind.PrePost, Phases("P01", 30, 30));

        Assert.Equal(StandardRating.DoesNot, judgement.Rating);
        Assert.Equal(["a change from baseline to intervention is one demonstration; 3 at different times are asked for"], judgement.Reasons);
    }

    [Fact]
    public void FollowUpsAreNoPartOfTheRating() => Assert.Equal(
        StandardRating.Meets,
        StandardJudgement.Of(Handbook, DesignKind.Withdrawal, [.. Phases("P01", 5, 5, 5, 5), new PhasePoints("P01", "later", PhaseRole.FollowUp, 1)]).Rating);

    [Fact]
    public void AReliabilityStudyIsNotCovered() =>
        Assert.Equal(StandardRating.NotCovered, StandardJudgement.Of(Handbook, DesignKind.Reliability, []).Rating);

    [Fact]
    public void WhatIsMissingIsNamedWithPhaseAndPlayer() => Assert.Equal(
        ["4 points in phase-3 of P01; 5 meet the standard"],
        StandardJudgement.Of(Handbook, DesignKind.Withdrawal, Phases("P01", 5, 5, 4, 5)).Reasons);

    [Fact]
    public void EveryEditionSaysWhereItsNumbersComeFrom() => Assert.All(
        DesignStandard.All,
        standard =>
        {
            Assert.Matches("^[a-z]+(-[a-z0-9.]+)*$", standard.Name);
            Assert.InRange(standard.Year, 2010, 2026);
            Assert.NotEmpty(standard.NotJudged);
            Assert.All(standard.Designs, threshold =>
            {
                Assert.NotEmpty(threshold.Basis);
                Assert.True(threshold.Reservations < threshold.Meets);
            });
        });

    private static PhasePoints[] Phases(string participant, params int[] points) => [.. points.Select((count, i) =>
        new PhasePoints(participant, $"phase-{i + 1}", i % 2 == 0 ? PhaseRole.Baseline : PhaseRole.Intervention, count))];
}
