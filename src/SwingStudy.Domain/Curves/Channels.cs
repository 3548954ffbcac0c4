namespace SwingStudy.Domain.Curves;

/// <summary>The channels that a source mapping may fill, and what they mean.</summary>
/// <remarks>
/// All vectors are in the laboratory frame: x to the target, y up, z to the right when facing the target (International Society of Biomechanics,
/// recommendations of 1995). Forces and moments of plates are reactions on the player; moments are about the origin of the plate's sensors.
/// </remarks>
public static class Channels
{
    /// <summary>The one plate on which both feet stand.</summary>
    public const string BothFeet = "both";

    /// <summary>Plates, by the foot that stands on them.</summary>
    public static IReadOnlyList<string> Plates { get; } = ["lead", "trail", BothFeet];

    /// <summary>Points of player and club.</summary>
    public static IReadOnlyList<Landmark> Landmarks { get; } =
    [
        new("club_head", "club head, centre"), new("shaft", "shaft below the grip"), new("grip", "grip, between the hands"),
        new("lead_wrist", "lead wrist"), new("lead_elbow", "lead elbow"), new("lead_shoulder", "lead shoulder"),
        new("trail_wrist", "trail wrist"), new("trail_elbow", "trail elbow"), new("trail_shoulder", "trail shoulder"),
        new("pelvis_front_lead", "front of the pelvis, lead side"), new("pelvis_front_trail", "front of the pelvis, trail side"), new("pelvis_back", "back of the pelvis, middle"),
        new("lead_hip", "lead hip joint"), new("lead_knee", "lead knee joint"), new("lead_ankle", "lead ankle joint"),
        new("trail_hip", "trail hip joint"), new("trail_knee", "trail knee joint"), new("trail_ankle", "trail ankle joint"),
    ];

    private static readonly Dictionary<string, Channel> ByName = All().ToDictionary(channel => channel.Name, StringComparer.Ordinal);

    /// <summary>Names of all channels.</summary>
    public static IReadOnlyCollection<string> Names => ByName.Keys;

    /// <summary>Sound, for the click of contact.</summary>
    public const string Sound = "sound";

    /// <summary>The channel of that name, or null.</summary>
    public static Channel? Find(string name) => ByName.GetValueOrDefault(name);

    /// <summary>Channel of a plate's force or moment, for instance <c>lead_force_y</c> in newtons or <c>trail_moment_z</c> in newton metres.</summary>
    /// <param name="plate">One of <see cref="Plates"/>.</param>
    /// <param name="quantity"><c>force</c> or <c>moment</c>.</param>
    /// <param name="axis"><c>x</c>, <c>y</c> or <c>z</c>.</param>
    public static string OfPlate(string plate, string quantity, char axis) => $"{plate}_{quantity}_{axis}";

    /// <summary>
    /// Channel of one sample that says where the origin of a plate's moments lies, in metres, for instance <c>lead_origin_x</c>: stored with captures
    /// whose file carries the geometry of its plates.
    /// </summary>
    /// <param name="plate">One of <see cref="Plates"/>.</param>
    /// <param name="axis"><c>x</c>, <c>y</c> or <c>z</c>.</param>
    public static string OriginOf(string plate, char axis) => $"{plate}_origin_{axis}";

    /// <summary>
    /// What a mapping may name: a channel, or a plate's centre of pressure from the middle of its top, for instance <c>lead_cop_x</c> in metres, of which moments
    /// are made at intake. Null for other names.
    /// </summary>
    public static Channel? FindInput(string name) => Find(name) ?? PressurePlaces.GetValueOrDefault(name);

    private static string FeetOn(string plate) => plate == BothFeet ? "both feet" : $"the {plate} foot";

    private static readonly Dictionary<string, Channel> PressurePlaces = Plates
        .SelectMany(plate => "xyz".Select(axis => new Channel(OfPlate(plate, "cop", axis), $"centre of pressure under {FeetOn(plate)}", "m")))
        .ToDictionary(channel => channel.Name, StringComparer.Ordinal);

    private static IEnumerable<Channel> All()
    {
        (char Name, string Meaning)[] axes = [('x', "+ to the target"), ('y', "+ up"), ('z', "+ to the right facing the target")];
        foreach (var plate in Plates)
        {
            foreach (var axis in axes)
            {
                yield return new Channel(OfPlate(plate, "force", axis.Name), $"force on {FeetOn(plate)}, {axis.Meaning}", "N");
                yield return new Channel(OfPlate(plate, "moment", axis.Name), $"moment under {FeetOn(plate)} about the plate's origin, {axis.Meaning}", "N.m");
                yield return new Channel(OriginOf(plate, axis.Name), $"place of the origin of the plate under {FeetOn(plate)}, {axis.Meaning}", "m");
            }
        }

        foreach (var landmark in Landmarks)
        {
            for (var i = 0; i < axes.Length; i++)
                yield return new Channel(landmark.Channels[i], $"{landmark.Title}, {axes[i].Meaning}", "m");
        }

        yield return new Channel(Sound, "sound at the ball", "V");
    }
}
