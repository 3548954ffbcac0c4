namespace SwingStudy.App.Demo.Model;

/// <summary>One swing of an invented player, without noise: places, forces and events that follow from a style. Times are relative to impact.</summary>
internal sealed class SwingModel
{
    private readonly Links _links;
    private readonly Ground _ground;
    private readonly Figurine _figurine;
    private readonly SwingStyle _style;

    /// <param name="style">The style.</param>
    /// <param name="hitsBall">Whether a ball slows the club at impact; a practice swing goes on.</param>
    public SwingModel(SwingStyle style, bool hitsBall = true)
    {
        _style = style;
        _links = new(style, hitsBall);
        _ground = new(style, _links.Start, _links.ImpactTime);
        _figurine = new(style, _links);
    }

    /// <summary>The player's standing weight, N.</summary>
    public double BodyWeight => _style.Body.Weight;

    /// <summary>Club head speed at impact, m/s.</summary>
    public double ClubHeadSpeed => _links.HeadSpeed;

    /// <summary>Direction of the head at impact above the horizontal, degrees.</summary>
    public double AttackAngle => Math.Atan2(_links.Approach.Up * Math.Sin(_style.Club.Plane * Math.PI / 180), _links.Approach.Along) * 180 / Math.PI;

    /// <summary>First movement of the club, s.</summary>
    public double Start => _links.Start - _links.ImpactTime;

    /// <summary>Top: the arms reverse; s.</summary>
    public double Top => -_links.ImpactTime;

    /// <summary>Speed of the hands, m/s.</summary>
    public double HandSpeed(double time) => _links.HandSpeed(time + _links.ImpactTime);

    /// <summary>Included angle of lead forearm and shaft, degrees; 180 = one line.</summary>
    public double ForearmShaftAngle(double time) => 180 - (Math.Abs(_links.At(time + _links.ImpactTime).Fold) * 180 / Math.PI);

    /// <summary>Height of the pelvis, m.</summary>
    public double PelvisHeight(double time) => _figurine.PelvisHeight(time + _links.ImpactTime);

    /// <summary>Flexion of the trail knee, degrees.</summary>
    public double TrailKneeFlexion(double time) => _figurine.KneeFlexion(time + _links.ImpactTime, -1);

    /// <summary>The points of <see cref="Figurine.Names"/> in the laboratory.</summary>
    public Point3[] Points(double time)
    {
        var points = _figurine.At(time + _links.ImpactTime);
        return _style.Body.LeftHanded ? Array.ConvertAll(points, Mirrored) : points;
    }

    /// <summary>Under the foot nearer the target.</summary>
    public FootLoad Lead(double time) => Facing(_ground.Lead(time + _links.ImpactTime));

    /// <summary>Under the other foot.</summary>
    public FootLoad Trail(double time) => Facing(_ground.Trail(time + _links.ImpactTime));

    /// <summary>Summed vertical force in body weights.</summary>
    public double VerticalForce(double time) => (Lead(time).Force.Y + Trail(time).Force.Y) / BodyWeight;

    /// <summary>Summed force to the target in body weights.</summary>
    public double TargetForce(double time) => (Lead(time).Force.X + Trail(time).Force.X) / BodyWeight;

    /// <summary>Moment of both feet about the vertical through their common centre of pressure, N.m; positive turns the player to the target.</summary>
    public double PivotMoment(double time)
    {
        var (lead, trail) = (_ground.Lead(time + _links.ImpactTime), _ground.Trail(time + _links.ImpactTime));
        var center = 1 / (lead.Force.Y + trail.Force.Y) * ((lead.Force.Y * lead.Pressure) + (trail.Force.Y * trail.Pressure));
        return lead.MomentAbout(center).Y + trail.MomentAbout(center).Y;
    }

    private FootLoad Facing(FootLoad load) => _style.Body.LeftHanded
        ? new(load.Force with { Z = -load.Force.Z }, Mirrored(load.Pressure), -load.FreeMoment)
        : load;

    /// <summary>A left-handed player stands on the same plates, with the ball on the other side.</summary>
    private static Point3 Mirrored(Point3 place) => place with { Z = (2 * Ground.FeetZ) - place.Z };
}
