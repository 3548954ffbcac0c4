using System.Globalization;
using System.Text.Json;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;
using SwingStudy.Storage.Files;

namespace SwingStudy.Storage.Registry;

/// <summary>Rows about the protocol as records, and back.</summary>
internal static class ProtocolRows
{
    internal static ProtocolVersion Version(Row row) => new()
    {
        Number = (int)row.Whole("number"),
        Hash = new Sha256(row.Text("hash")),
        Version = row.Text("version"),
        Text = row.Text("text"),
        Comparisons = Read<List<PlannedComparison>>(row, "comparisons"),
        Taken = Read<List<PhaseData>>(row, "taken"),
        Reason = row.OptionalText("reason"),
        Known = row.OptionalText("known"),
        Actor = row.Text("actor"),
        At = row.At("at"),
    };

    internal static object Write(ProtocolVersion version) => new
    {
        version.Number,
        Hash = version.Hash.ToString(),
        version.Version,
        version.Text,
        Comparisons = JsonSerializer.Serialize(version.Comparisons),
        Taken = JsonSerializer.Serialize(version.Taken),
        version.Reason,
        version.Known,
        version.Actor,
        At = Row.Write(version.At),
    };

    internal static Draw Draw(Row row, IReadOnlyList<DrawnPlayer> players) => new()
    {
        Number = (int)row.Whole("number"),
        ProtocolVersion = (int)row.Whole("protocol_version"),
        Kind = row.Text("kind"),
        Seed = ulong.Parse(row.Text("seed"), CultureInfo.InvariantCulture),
        IsJoint = row.Whole("is_joint") != 0,
        OrderDrawn = row.Whole("order_drawn") != 0,
        Windows = Read<List<List<int>>>(row, "windows"),
        Assignments = row.Number("assignments"),
        Actor = row.Text("actor"),
        At = row.At("at"),
        Players = players,
    };

    internal static object Write(Draw draw) => new
    {
        draw.Number,
        draw.ProtocolVersion,
        draw.Kind,
        Seed = draw.Seed.ToString(CultureInfo.InvariantCulture),
        draw.IsJoint,
        draw.OrderDrawn,
        Windows = JsonSerializer.Serialize(draw.Windows),
        draw.Assignments,
        draw.Actor,
        At = Row.Write(draw.At),
    };

    internal static DrawnPlayer Player(Row row) => new()
    {
        Participant = row.Text("participant"),
        Set = Read<AssignmentSet>(row, "admissible"),
        Assignment = row.Text("assignment"),
        Tier = (int?)row.OptionalWhole("tier"),
        Phases = Read<List<string>>(row, "phases"),
    };

    internal static object Write(int draw, DrawnPlayer player) => new
    {
        draw,
        player.Participant,
        Admissible = JsonSerializer.Serialize(player.Set),
        player.Assignment,
        player.Tier,
        Phases = JsonSerializer.Serialize(player.Phases),
    };

    internal static MaskedName MaskedName(Row row) => new(row.Text("kind"), row.Text("name"), row.Text("code"));

    internal static Unblinding Unblinding(Row row) => new(row.At("at"), row.Text("actor"), row.Text("reason"), row.OptionalText("known"));

    private static T Read<T>(Row row, string column) => JsonSerializer.Deserialize<T>(row.Text(column))!;
}
