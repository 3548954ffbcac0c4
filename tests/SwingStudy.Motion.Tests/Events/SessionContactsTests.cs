using SwingStudy.Motion.Events;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Tests.Support;

namespace SwingStudy.Motion.Tests.Events;

/// <summary>Sessions of invented swings whose contact is at time zero, whatever is marked.</summary>
public class SessionContactsTests
{
    [Theory]
    // Frame rate, noise of a marker, scatter of the ball along the target line, loss of turn at contact, greatest rms error in seconds.
    // Without loss there are no breaks: half of what marks of 0.5 ms and the ball scatter, and the common place of twelve.
    [InlineData(240, 0.0003, 0, 0, 0.00035)]
    [InlineData(240, 0.0003, 0.005, 0, 0.00035)]
    [InlineData(200, 0.0006, 0.02, 0, 0.0005)]
    // With it, breaks of 0.05 to 0.3 ms tell how alike the balls lie.
    [InlineData(200, 0.0006, 0, 0.2, 0.00015)]
    [InlineData(240, 0.0003, 0.005, 0.2, 0.00015)]
    [InlineData(500, 0.0003, 0.02, 0.2, 0.00015)]
    [InlineData(500, 0.0003, 0.1, 0.2, 0.0002)]
    public void ContactIsBetterThanItsMarks(double rate, double noise, double ball, double lost, double most)
    {
        var (sum, count, covered) = (0.0, 0, 0);
        for (var session = 0; session < 4; session++)
        {
            foreach (var contact in SessionContacts.Of(Swings(12, rate, noise, ball, lost, session), new EventLimits()))
            {
                sum += contact!.TimeS * contact.TimeS;
                count++;
                covered += Math.Abs(contact.TimeS) < 2.5 * contact.ScatterS ? 1 : 0;
            }
        }

        Assert.InRange(Math.Sqrt(sum / count), 0, most);
        Assert.InRange(covered, 0.9 * count, count);
    }

    [Fact]
    public void LeftHandedPlayersMirrorRightHandedOnes()
    {
        var right = SessionContacts.Of(Swings(6, 240, 0.0003, 0.005, 0.2, 1), new EventLimits());
        var left = SessionContacts.Of([.. Swings(6, 240, 0.0003, 0.005, 0.2, 1).Select(swing => swing with { Hands = swing.Hands.Mirrored(), Head = swing.Head.Mirrored() })], new EventLimits());
        Assert.Equal(right.Select(contact => Math.Round(contact!.TimeS, 9)), left.Select(contact => Math.Round(contact!.TimeS, 9)));
    }

    [Fact]
    public void APracticeSwingHasTheMomentAtWhichItsHeadPassesTheBallsPlace()
    {
        var swings = Swings(10, 240, 0.0003, 0, 0.2, 2).ToList();
        var practice = Swing(240, 0.0003, new InventedSwing { LostAtImpact = 0, Place = new Vector3D(0, 0.01, -0.05) }, 77, double.NaN);
        swings.Insert(4, practice);
        var contact = SessionContacts.Of(swings, new EventLimits())[4]!;
        Assert.Equal((false, false, 10), (contact.HasMark, contact.HasBreak, contact.PlaceSwings));
        Assert.Equal(0, contact.TimeS, 0.0002);
    }

    [Fact]
    public void ASwingThatPassesFarFromTheBallHasNoContact()
    {
        var swings = Swings(10, 240, 0.0003, 0, 0.2, 2).ToList();
        swings.Insert(4, Swing(240, 0.0003, new InventedSwing { LostAtImpact = 0, Place = new Vector3D(0, 0, 0.6) }, 77, double.NaN));
        Assert.Null(SessionContacts.Of(swings, new EventLimits())[4]);
    }

    [Fact]
    public void AMarkThatIsLateByFramesIsSetRightByTheBreakAtThePlace()
    {
        // 30 ms late: no break is looked for so far from a mark.
        var swings = Swings(10, 240, 0.0003, 0, 0.2, 3).ToList();
        swings[6] = swings[6] with { MarkedS = 0.03 };
        var contact = SessionContacts.Of(swings, new EventLimits())[6]!;
        Assert.Equal(0, contact.TimeS, 0.0003);
        Assert.True(contact.HasBreak);
    }

    [Fact]
    public void ALateMarkThatNothingElseSpeaksAgainstStands()
    {
        var swings = Swings(10, 240, 0.0003, 0, 0, 3).ToList();
        swings[6] = swings[6] with { MarkedS = 0.03 };
        var contacts = SessionContacts.Of(swings, new EventLimits());
        Assert.Equal(new ContactOfSwing(0.03, double.NaN, true, false, 0), contacts[6]);
        Assert.Equal(9, contacts.Count(contact => contact!.PlaceSwings == 9));
        Assert.All(contacts.Where((_, i) => i != 6), contact => Assert.Equal(0, contact!.TimeS, 0.001));
    }

    [Fact]
    public void FewSwingsStandAlone()
    {
        var swings = Swings(3, 240, 0.0003, 0, 0.2, 4);
        var contacts = SessionContacts.Of(swings, new EventLimits());
        for (var i = 0; i < 3; i++)
        {
            var own = ContactOfClub.Near(swings[i].Hands, swings[i].Head, swings[i].MarkedS)!;
            Assert.Equal(new ContactOfSwing(own.TimeS, own.ScatterS, false, true, 0), contacts[i]);
        }
    }

    [Fact]
    public void WithoutMarksBreaksNearTheHeadsOwnMomentTellContact()
    {
        var swings = Swings(8, 240, 0.0003, 0.005, 0.2, 5).Select(swing => swing with { MarkedS = double.NaN, NearS = 0.003 }).ToList();
        Assert.All(SessionContacts.Of(swings, new EventLimits()), contact => Assert.Equal((0, false, true), (Math.Round(contact!.TimeS, 3), contact.HasMark, contact.HasBreak)));
    }

    [Fact]
    public void AMovedBallIsTakenWhereItLies()
    {
        var swings = Swings(8, 240, 0.0003, 0, 0, 6).Concat(Swings(8, 240, 0.0003, 0, 0, 7, new Vector3D(0.2, 0, 0))).ToList();
        var contacts = SessionContacts.Of(swings, new EventLimits());
        Assert.All(contacts, contact => Assert.Equal(8, contact!.PlaceSwings));
        Assert.InRange(Math.Sqrt(contacts.Average(contact => contact!.TimeS * contact.TimeS)), 0, 0.0006);
    }

    /// <summary>Swings with marks of 0.5 ms about their contact; balls, and players with them, moved along the target line.</summary>
    private static IReadOnlyList<ClubSwing> Swings(int count, double rate, double noise, double ball, double lost, int session, Vector3D place = default)
    {
        var scatter = new Noise(900 + session);
        return [.. Enumerable.Range(0, count).Select(i => Swing(
            rate, noise, new InventedSwing { LostAtImpact = lost, TopS = -0.27 + (0.004 * scatter.Next()), Place = place + new Vector3D(ball * scatter.Next(), 0, 0.01 * scatter.Next()) },
            (100 * session) + i, 0.0005 * scatter.Next()))];
    }

    private static ClubSwing Swing(double rate, double noise, InventedSwing swing, int seed, double marked)
    {
        var phase = seed * 0.618 % 1 / rate;
        return new ClubSwing(
            InventedSwing.Seen(swing.Grip, rate, noise, seed + 1, phaseS: phase), InventedSwing.Seen(swing.Head, rate, noise, 5000 + seed, phaseS: phase), marked, 0, double.NaN);
    }
}
