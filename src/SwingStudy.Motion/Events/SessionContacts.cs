using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Kinematics;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Events;

/// <summary>Contact in the swings of one player's session, from marks, from breaks in the shaft's turn, and from where the ball lay.</summary>
/// <remarks>
/// A head that passes a known place at 40 m/s tells the moment within hundredths of a millisecond. The place is where the heads of the session were at the contacts
/// that marks and breaks tell (<see cref="BallPlace"/>), along the direction in which they travel there; how alike the balls lay, the session itself shows, by
/// breaks and by where the heads were set down at address. The head
/// before contact is that of <see cref="ClubAtImpact"/>, which sees no sample after it; it is taken anew at the contact found. A swing without mark or break has
/// contact where its head passes the place that the swings nearest in order share, as a practice swing passes it too.
/// </remarks>
public static class SessionContacts
{
    private const int Rounds = 2;

    /// <summary>Swings that travel otherwise at contact are not of the session's kind.</summary>
    private const double LeastAlong = 0.7;

    /// <summary>How far beside the ball's place a head may pass it.</summary>
    private const double MostBesideM = 0.3;

    private const double PassageReachS = 0.1;

    /// <summary>Contact in each swing, in the order given; null where nothing tells it.</summary>
    /// <param name="swings">Swings in order of time.</param>
    /// <param name="limits">Thresholds.</param>
    public static IReadOnlyList<ContactOfSwing?> Of(IReadOnlyList<ClubSwing> swings, EventLimits limits)
    {
        ContactOfClub?[] breaks = [.. swings.Select(BreakOf)];
        double[] own = [.. swings.Select((swing, i) => breaks[i]?.TimeS ?? swing.MarkedS)];
        var (times, found) = (own, new ContactOfSwing?[swings.Count]);
        IReadOnlyList<Shared> shared = [];
        for (var round = 0; round < Rounds; round++)
        {
            shared = Places(swings, breaks, times, limits);
            times = [.. own];
            found = [.. swings.Select((_, i) => double.IsNaN(own[i]) ? null
                : new ContactOfSwing(own[i], breaks[i]?.ScatterS ?? double.NaN, breaks[i] is null, breaks[i] is not null, 0))];
            foreach (var group in shared)
                group.Tell(found, times);
        }

        for (var i = 0; i < swings.Count && shared.Count > 0; i++)
        {
            // A swing that tells nothing, or whose mark alone speaks against the place of the others.
            if (breaks[i] is null && found[i] is not { PlaceSwings: > 0 })
                found[i] = shared.MinBy(group => group.DistanceTo(i))!.Passed(swings[i], found[i] is null) ?? found[i];
        }

        return found;
    }

    private static ContactOfClub? BreakOf(ClubSwing swing)
    {
        var near = double.IsNaN(swing.MarkedS) ? swing.NearS : swing.MarkedS;
        return double.IsNaN(near) ? null : ContactOfClub.Near(swing.Hands, swing.Head, near);
    }

    private static IReadOnlyList<Shared> Places(IReadOnlyList<ClubSwing> swings, ContactOfClub?[] breaks, double[] times, EventLimits limits)
    {
        ClubAtImpact?[] clubs = [.. swings.Select((swing, i) => double.IsNaN(times[i]) ? null : ClubAtImpact.Before(swing.Hands, swing.Head, times[i]))];
        Vector3D sum = default;
        foreach (var club in clubs)
            sum += club?.Velocity.Direction is { IsMissing: false } direction ? direction : default;
        var along = sum.Direction;
        if (along.IsMissing)
            return [];
        ContactEvidence[] evidence = [.. swings.Select((swing, i) => EvidenceOf(swing, i))];
        return [.. PlaceGroup.Of(evidence).Select(group => BallPlace.Of(group.Evidence) is { } place ? new Shared(group, place, along, clubs, times) : null).OfType<Shared>()];

        ContactEvidence EvidenceOf(ClubSwing swing, int i)
        {
            if (clubs[i] is not { } club || !(club.Velocity.Direction.Dot(along) > LeastAlong))
                return new ContactEvidence(double.NaN, double.NaN, 0, double.NaN, double.NaN);
            var (speed, place) = (club.Velocity.Dot(along), club.Place.Dot(along));
            return new ContactEvidence(
                speed, place + (speed * (swing.MarkedS - times[i])), speed * swing.MarkFloorS,
                breaks[i] is { } own ? place + (speed * (own.TimeS - times[i])) : double.NaN, speed * (breaks[i]?.ScatterS ?? double.NaN),
                AddressPlace.Of(swing.Head, times[i], club.Place, limits).Dot(along));
        }
    }

    /// <summary>The place that some swings of the session share.</summary>
    private sealed class Shared(PlaceGroup group, BallPlace place, Vector3D along, ClubAtImpact?[] clubs, double[] from)
    {
        private readonly Vector3D _middle = Middle(group.Members.Select(i => clubs[i]!.Place));

        public int DistanceTo(int swing) => group.Members.Min(member => Math.Abs(member - swing));

        /// <summary>Sets the contacts of the swings that share it.</summary>
        public void Tell(ContactOfSwing?[] found, double[] times)
        {
            for (var k = 0; k < group.Members.Count; k++)
            {
                var i = group.Members[k];
                var speed = group.Evidence[k].SpeedMps;
                times[i] = from[i] + ((place.Swings[k].PlaceM - clubs[i]!.Place.Dot(along)) / speed);
                found[i] = new ContactOfSwing(
                    times[i], place.Swings[k].ScatterM / speed, group.Evidence[k].HasMark, group.Evidence[k].HasBreak, group.Members.Count);
            }
        }

        /// <summary>When a head passes the place, or breaks near it; null when it does not pass, or where only a break could speak against a mark and there is none.</summary>
        public ContactOfSwing? Passed(ClubSwing swing, bool isAlone)
        {
            if (Passage(swing.Head) is not { } near)
                return null;
            var contact = ContactOfClub.Near(swing.Hands, swing.Head, near);
            if (contact is null && !isAlone)
                return null;
            var (time, speed) = (near, 0.0);
            if (ClubAtImpact.Before(swing.Hands, swing.Head, contact?.TimeS ?? near) is { } club && (speed = club.Velocity.Dot(along)) > 0)
                time = (contact?.TimeS ?? near) + ((place.PlaceM - club.Place.Dot(along)) / speed);
            else if (contact is null)
                return null;
            else
                return new ContactOfSwing(contact.TimeS, contact.ScatterS, false, true, 0);
            var variance = ((place.PlaceScatterM * place.PlaceScatterM) + (place.BallScatterM * place.BallScatterM)) / (speed * speed);
            if (contact is null)
                return new ContactOfSwing(time, Math.Sqrt(variance), false, false, group.Members.Count);
            var weight = variance / (variance + (contact.ScatterS * contact.ScatterS));
            return new ContactOfSwing(time + (weight * (contact.TimeS - time)), Math.Sqrt(weight) * contact.ScatterS, false, true, group.Members.Count);
        }

        /// <summary>When the samples of a head pass the place, nearest to where it is fastest.</summary>
        private double? Passage(Trajectory head)
        {
            if (Peak.Highest([.. Enumerable.Range(0, Math.Max(0, head.Count - 1)).Select(i => (head[i + 1] - head[i]).Length)]) is not { } fastest)
                return null;
            var reach = (int)(PassageReachS * head.Axis.SampleRateHz);
            (double Position, int Distance)? best = null;
            for (var i = Math.Max(0, fastest.Index - reach); i < Math.Min(head.Count - 1, fastest.Index + reach); i++)
            {
                var (before, after) = ((head[i].Dot(along)) - place.PlaceM, head[i + 1].Dot(along) - place.PlaceM);
                if (!(before <= 0 && after > 0))
                    continue;
                var share = -before / (after - before);
                if ((head[i] + (share * (head[i + 1] - head[i])) - _middle).Length < MostBesideM && (best is null || Math.Abs(i - fastest.Index) < best.Value.Distance))
                    best = (i + share, Math.Abs(i - fastest.Index));
            }

            return best is { } found ? head.Axis.TimeOf(found.Position) : null;
        }

        private static Vector3D Middle(IEnumerable<Vector3D> places)
        {
            Vector3D sum = default;
            var count = 0;
            foreach (var own in places)
                (sum, count) = (sum + own, count + 1);
            return sum / count;
        }
    }
}
